/** Which axles drive, and how they are joined, for the closed forms on even ground. */
export type DriveLayout = 'front' | 'rear' | 'four locked' | 'four open centre';

export interface Layout {
  readonly wheelbaseM: number;
  readonly behindFrontM: number;
  readonly massHeightM: number;
}

/**
 * Steepest even slope that adhesion allows, tan α, no rolling resistance. Moments at the limit of the driven wheels:
 * rear μa/(L − μh), front μb/(L + μh), four locked μ; with an open centre both axles give the lesser one's effort, and
 * the front is the lesser on a climb unless little weight is behind: 2μb/(L + 2μh) or 2μa/(L − 2μh).
 * Rear and four-wheel forms stand in textbooks of statics; the front one is Mannering & Washburn eq. 2.15 at f = 0.
 */
export function steepestTan(drive: DriveLayout, mu: number, layout: Layout): number {
  const { wheelbaseM: L, behindFrontM: a, massHeightM: h } = layout;
  const b = L - a;
  switch (drive) {
    case 'rear':
      return (mu * a) / (L - mu * h);
    case 'front':
      return (mu * b) / (L + mu * h);
    case 'four locked':
      return mu;
    case 'four open centre': {
      const rear = L - 2 * mu * h;
      return Math.min((2 * mu * b) / (L + 2 * mu * h), rear > 0 ? (2 * mu * a) / rear : Infinity);
    }
  }
}
