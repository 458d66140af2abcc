import type { Classification } from '../classification.ts';

/**
 * Grades 1 to 5 as South African trails are graded, in the words of a training provider, not of an agency: 1 "soft-roaders
 * and bakkies: all-wheel drive, or 4x2 with diff lock; good ground clearance; corrugated or eroded gravel roads, farm
 * roads, forest roads when dry" · 2 "4x4s and all-wheel drives with traction control; soft sand or loose strata; experience
 * not necessary; deflate tyres" · 3 "only vehicles with low range; tyres should be deflated" · 4 "low range, high ground
 * clearance, traction control or diff locks; some experience; walk it first; damage may occur" · 5 "as 4, with undercarriage
 * protection and better angles, all-terrain or mud-terrain tyres; winch recommended; never alone".
 *
 * The trials are our reading of those words. Whether grade 3 asks for experience reads two ways in the two sources that
 * were seen; it is taken not to, so that a place which asks for care is a 4. The two-wheel drive of grade 1 may take care: at
 * the lowest adhesion that any table prints for gravel it has none to spare on a farm road of 3°.
 */
export const SOUTH_AFRICA: Classification = {
  id: 'south africa',
  source: {
    organisation: 'Explorer 4x4, a South African driver training provider',
    title: 'Trail Grading Criteria',
    year: null,
    address: 'https://explorer4x4.co.za/hints-from-nic/trail-grading-criteria',
  },
  levels: [
    {
      trials: [
        { vehicle: 'soft-roader', gear: 'high', tyresDown: false, care: false },
        { vehicle: 'two-wheel-drive utility', gear: 'locked', tyresDown: false, care: true },
      ],
      tyres: null,
    },
    {
      trials: [
        { vehicle: 'soft-roader', gear: 'high', tyresDown: true, care: false },
        { vehicle: 'utility', gear: 'high', tyresDown: true, care: false },
      ],
      tyres: null,
    },
    {
      trials: [
        { vehicle: 'wagon', gear: 'low', tyresDown: true, care: false },
        { vehicle: 'utility', gear: 'low', tyresDown: true, care: false },
      ],
      tyres: null,
    },
    { trials: [{ vehicle: 'raised wagon', gear: 'locked', tyresDown: true, care: true }], tyres: null },
    {
      trials: [{ vehicle: 'prepared wagon', gear: 'locked', tyresDown: true, care: true }],
      tyres: 'all-terrain',
    },
  ],
};
