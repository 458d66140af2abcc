import { describe, expect, it } from 'vitest';
import type { ProfileView } from '../../src/draw/profile.ts';
import { profileScale, profileSvg } from '../../src/draw/profile.ts';
import { slopeOf } from '../../src/route/slope.ts';
import type { Track } from '../../src/route/track.ts';
import { expectGolden } from '../golden.ts';

/** Level, a pitch of 27 %, level, down at 10 %: 3 km due north from the equator, a point every 10 m. */
function track(unknownFrom = Infinity, unknownTo = Infinity, gapAt: number | null = null): Track {
  const stations = Array.from({ length: 301 }, (_, i) => i * 10);
  const height = (s: number) =>
    500 + 0.27 * Math.min(Math.max(s - 800, 0), 300) - 0.1 * Math.max(s - 1800, 0);
  return {
    name: '',
    description: '',
    kind: 'track',
    length: 301,
    lng: new Float64Array(301),
    lat: Float64Array.from(stations, (s) => s / 110_574),
    elevationM: Float64Array.from(stations, (s) => (s >= unknownFrom && s <= unknownTo ? NaN : height(s))),
    timeS: new Float64Array(301),
    distanceM: Float64Array.from(stations),
    segmentStart: gapAt === null ? Uint32Array.of(0) : Uint32Array.of(0, gapAt / 10),
    model: null,
  };
}

function view(of: Track, more: Partial<ProfileView> = {}): ProfileView {
  return {
    profile: slopeOf(of),
    flags: [],
    gapsM: [],
    reversed: false,
    system: 'metric',
    widthPx: 640,
    heightPx: 200,
    ...more,
  };
}

const flag = (number: number, stationM: number, name = 'Step') => ({
  number,
  name,
  stationM,
  chosen: number === 2,
});

describe('a long section', () => {
  it('goes from pixel to station and back', () => {
    const scale = profileScale(view(track()));
    for (const s of [0, 1234, 3000]) expect(scale.stationOf(scale.xOf(s))).toBeCloseTo(s, 6);
    expect(scale.stationOf(-50)).toBe(0);
    expect(scale.stationOf(9999)).toBe(3000);
  });

  it('states by how much heights are blown up, as its own pixels show', () => {
    const scale = profileScale(view(track()));
    const up = scale.yOf(0) - scale.yOf(1);
    const across = scale.xOf(1) - scale.xOf(0);
    expect(scale.exaggeration).toBeCloseTo(up / across, 9);
    expect(profileSvg(view(track()))).toContain(`heights × ${(up / across).toFixed(1)}`);
  });

  it('colours the pitch by its slope', () => {
    const svg = profileSvg(view(track()));
    expect(svg).toContain('#fe9929');
    expect(svg).not.toContain('#d95f0e');
  });

  it('says where elevation is not known, and draws no ground there', () => {
    const svg = profileSvg(view(track(1200, 2200)));
    expect(svg).toContain('elevation not known');
    const scale = profileScale(view(track(1200, 2200)));
    const [from, to] = [scale.xOf(1300), scale.xOf(2100)];
    const surfaces = [...svg.matchAll(/class="surface" d="([^"]+)"/g)].map(([, d]) => d);
    expect(surfaces).toHaveLength(2);
    for (const [, x] of surfaces.join('').matchAll(/[ML]([\d.]+)/g))
      expect(Number(x) < from || Number(x) > to).toBe(true);
  });

  it('breaks at a gap', () => {
    const svg = profileSvg(view(track(Infinity, Infinity, 1500), { gapsM: [1500] }));
    expect([...svg.matchAll(/class="surface"/g)]).toHaveLength(2);
    expect(svg).toContain('>gap<');
  });

  it('says so when no elevation is known at all, or there is hardly any room', () => {
    expect(profileSvg(view(track(0, 9999)))).toContain('no elevation known');
    expect(profileSvg(view(track(), { widthPx: 20, heightPx: 20 }))).not.toContain('NaN');
  });

  it('escapes names', () => {
    expect(profileSvg(view(track(), { flags: [flag(1, 900, '<b> & co')] }))).toContain(
      '1 &lt;b&gt; &amp; co',
    );
  });
});

describe('drawings that should not change unseen', () => {
  it('flags in two rows', () => {
    const flags = [flag(1, 860), flag(2, 900), flag(3, 2400)];
    expectGolden('tests/draw/out/profile-flags.svg', profileSvg(view(track(), { flags })) + '\n');
  });

  it('a gap and an unknown stretch, reversed, in feet and miles', () => {
    const broken = track(2000, 2700, 1500);
    const drawn = view(broken, { gapsM: [1500], reversed: true, system: 'imperial' });
    expectGolden('tests/draw/out/profile-broken.svg', profileSvg(drawn) + '\n');
  });
});
