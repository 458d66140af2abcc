import { rad } from '../units.ts';

/** Every number that someone chose for the traverse, with its reason and what it does. */

/** Distance between stations, metres; halving it moves no margin by more than its tolerance. */
export const STATION_M = 0.05;

/** Distance between ground samples along for each of the many draws, metres; an edge is met within it. */
export const DRAWN_SAMPLE_M = 0.05;

/** Distance between ground samples along, metres; the ground is straight in between, so an edge is off by at most this. */
export const SAMPLE_M = 0.025;

/** Distance between ground samples across, metres; a wheel's edge is off by at most half of it, inside the driver's error. */
export const ACROSS_M = 0.05;

/** Ground sampled beyond either end of the obstacle, metres: the longest wheelbase with an overhang, and a wheel. */
export const BEYOND_M = 8;

/**
 * Ground within this of the highest under a tread bears too, metres: about what a tyre is squashed by where it stands.
 * Less would find narrower treads.
 */
export const BEARS_M = 0.02;

/** Steepest tangent of a contact that is reckoned with; beyond it (87°) a wheel pushes at a wall. */
export const STEEPEST_CONTACT = 20;

/**
 * Slide to one side that spoils a line, metres: twice the driver's error. A wheel that would come to rest sooner, as in
 * the bottom of a rut, has not left its line.
 */
export const SLIDE_M = 0.2;

/** How far a point of the body may be moved along or across by pitch and roll, metres: its height over the ground. */
export const LEANS_M = 0.7;

/** A pose turned further than this from the plane (tangent) is falling. */
export const FALLING = 1;

/** Newton steps before the solver gives up and says that the vehicle does not stand; usual are two or three. */
export const MOST_STEPS = 80;

/** Steps taken whole before they are halved. */
export const FREE_STEPS = 10;

/** Greatest turn of the body in one step (tangent): what one set of touching wheels says is not believed any further. */
export const GREATEST_TURN = 0.1;

/** A body poised on an edge is turned this much nearer to level, so many times, before it counts as going over. */
export const NUDGE = 0.9;
export const MOST_NUDGES = 3;

/** Force left over that counts as balanced, as a share of weight. */
export const BALANCED = 1e-9;

/** Load of a side or an end that counts as lifted, as a share of weight. */
export const LIFTED = 1e-6;

/** Share of weight left on its wheels from which a vehicle in water counts as adrift. */
export const AFLOAT = 0.2;

/** Least 1 + μ tan α that is reckoned with where a contact falls away steeply; keeps a wheel's bound finite. */
export const LEAST_BITE = 0.1;

/** Load under which a wheel counts as hanging, over the mean of the four. */
export const HANGS = 0.15;

/**
 * Rolling resistance that is relied on to hold a vehicle back: hard ground's. What is printed for soft ground ranges
 * widely, and soft ground ends.
 */
export const ROLLING_HELPS = 0.02;

/** Sine of the ground's fall, mean over a wheelbase, from which a line counts as a descent: 5°. Common practice, no source. */
export const DESCENT_FROM = 0.087;

/** Fastest that momentum is relied on, m/s: 10 km/h, a run. Common practice, no source. More would carry further and break more. */
export const SPEED_CAP_MPS = 10 / 3.6;

/** Steepest contact (tangent, 45°) that is taken at a run; a wheel that hits steeper ground at speed breaks something. */
export const STEEPEST_RUN = 1;

/** Length over which a wheel path's crest is judged for the speed that would lift a wheel, metres: half a wheelbase. */
export const CREST_M = 1.2;

/**
 * Tilt kept in hand for jolts, which a slow traverse does not see. SAE 2003-01-3385 finds dynamic tipping of heavy trucks
 * some 25 % below static; 5° is that share of a usual remaining 20°.
 */
export const TIP_RESERVE_RAD = rad(5);

/** What a driver misses the chosen line by, either way, metres. Common practice, no source. */
export const DRIVER_ERROR_M = 0.1;

/** Below these a positive margin is within what model and tape can tell. */
export const TOLERANCE = {
  /** Underbody gap, metres: the ± of a taped depth, and a stone's turn. */
  gapM: 0.03,
  tipRad: rad(3),
  /** Traction, braking and side hold over weight; the spread of published adhesion is larger and is drawn separately. */
  grip: 0.03,
} as const;
