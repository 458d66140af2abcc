import { expect, test } from 'vitest';
import { auditFaults } from './audit.ts';

const NAMES = new Set(['saxes', 'fflate']);

test('a grave fault of what is delivered is told, and no other', () => {
  const vulnerabilities = {
    saxes: { severity: 'high', range: '<6.0.1' },
    fflate: { severity: 'moderate', range: '*' },
    eslint: { severity: 'critical', range: '*' },
  };
  expect(auditFaults(JSON.stringify({ vulnerabilities }), NAMES)).toEqual(['saxes <6.0.1: high']);
  expect(auditFaults(JSON.stringify({ vulnerabilities: {} }), NAMES)).toEqual([]);
});

test.each(['', 'npm error', '{"error":{"code":"ENOTFOUND"}}', '{"message":"405 Method Not Allowed"}'])(
  'without an answer nothing is held against anyone: %j',
  (answer) => {
    expect(auditFaults(answer, NAMES)).toBeNull();
  },
);
