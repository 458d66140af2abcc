import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import { contentsOf } from '../../src/archive/out/contents.ts';
import { briefingOf } from '../../src/brief/brief.ts';
import { gradeWord, requirementText } from '../../src/brief/gradeText.ts';
import { gradeTold, gradeToldOf, gradeToldText } from '../../src/brief/gradeTold.ts';
import { briefingPage } from '../../src/brief/page.ts';
import type { Graded, ObstacleGrade } from '../../src/grade/rating.ts';
import { say } from '../../src/words/words.ts';
import { matrix, order, outing, places } from './outing.ts';

const CAUTION = 'Local signs, closures and the people who look after the land outrank this grade.';

const graded = (open: Graded['open'], level = 2): Graded => ({ level, reason: null, open, beyond: false });

function told(requirement: Parameters<typeof gradeTold>[4] = null) {
  const about = outing();
  const each = about.obstacles.map(({ id }, i): ObstacleGrade => ({
    obstacleId: id,
    level: i + 2,
    reason: { kind: 'size', measure: 'rut', value: 0.32, limit: 0.2 },
    open: [],
    beyond: false,
  }));
  return { about, grade: gradeTold(about, each, 'australia', 'wet', requirement)! };
}

describe('a level', () => {
  it('is never said to be easier than it may be', () => {
    expect(gradeWord(graded([]), 'australia')).toBe('Medium');
    expect(gradeWord(graded(['water']), 'australia')).toBe('at least Medium');
    expect(gradeWord(graded(['rough track slope']), 'south africa')).toBe('at least Grade 2');
    for (const open of ['slope', 'camber', 'size', 'contradiction', 'vehicles', 'track slope'] as const)
      expect(gradeWord(graded(['water', open]), 'australia')).toBe('not known, at least Medium');
  });
});

describe("the leader's sheet", () => {
  it('has one paragraph with grade, classification, season, what sets it and the caution', () => {
    const { about, grade } = told();
    const briefing = briefingOf(about, places(about), matrix(about), order(about), grade);
    const page = briefingPage(briefing, 'metric');
    const paragraph = /<p class="grade">(.*?)<\/p>/s.exec(page)![1].replace(/<[^>]*>/g, '');
    expect(paragraph).toContain('Difficult (Australian national policy, four levels, wet)');
    expect(paragraph).toContain('set by 2 Second: depth of ruts or holes up to 32 cm with its ±');
    expect(paragraph).toContain('Medium ends at 20 cm');
    expect(paragraph).toContain(say.grading.takesNotAsked);
    expect(paragraph.endsWith(CAUTION)).toBe(true);
  });

  it('tells what it takes where that was worked out', () => {
    const need = { found: true, value: 0.22, atEnd: false, obstacleId: 'o2' } as const;
    const any = { ...need, atEnd: true } as const;
    const requirement = {
      needs: { clearance: need, angles: any, trackWidth: any, width: any, tyre: any, wading: any },
      rung: 'rear locker',
      rungSetBy: 'o2',
      stops: ['o1'],
      notKnown: [],
    };
    const text = requirementText(requirement, (id) => id.toUpperCase(), 'metric');
    expect(text).toBe(
      'It takes: rear locker, clearance 22 cm. Nothing found that makes the reference go: O1.',
    );
    const { grade } = told(requirement);
    expect(gradeToldText(grade, (id) => id, 'metric')).toContain('It takes: rear locker');
  });

  it('has none where nothing is graded', () => {
    const nothing = { track: null, obstacles: [], direction: 'as recorded' } as const;
    expect(gradeToldOf(nothing, 'australia', 'dry')).toBeNull();
  });
});

describe('files for other programs', () => {
  const trip = readTrip(readFileSync('tests/archive/in/version-1.json', 'utf8')).value!;

  it('carry the grade as text with its caution, on the whole and on each obstacle', () => {
    const grade = gradeToldOf(trip, 'south africa', 'dry');
    const { description, places: out } = contentsOf(trip, 'metric', grade);
    const obstacles = out.filter(({ kind }) => kind === 'obstacle');
    expect(obstacles.length).toBeGreaterThan(0);
    for (const text of [description, ...obstacles.map((one) => one.description)]) {
      expect(text).toMatch(/Grade: .*Grade [1-5] \(South African grades, 1 to 5, dry\)/);
      expect(text).toContain(CAUTION);
    }
  });

  it('say nothing of it where it was not asked for', () => {
    const { description, places: out } = contentsOf(trip, 'metric');
    expect([description, ...out.map((one) => one.description)].join()).not.toContain('Grade');
  });
});
