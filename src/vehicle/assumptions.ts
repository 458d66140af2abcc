/** Every number about vehicles that someone chose because no owner can read it off the vehicle, with reason and consequence. */

/**
 * Share of an axle's load that does not ride on its springs. Common practice, no source: 10 to 15 % independent,
 * 15 to 20 % with a beam. A greater share keeps a hanging wheel on the ground for a little longer.
 */
export const UNSPRUNG_SHARE = { independent: 0.12, beam: 0.18 } as const;

/**
 * Distance between an axle's springs over its track width. Common practice, no source: 0.65 to 0.8 for beams. A smaller
 * share lets the axle follow the ground more freely and the body lean further.
 */
export const SPRING_BASE = { independent: 1, beam: 0.75 } as const;

/**
 * Height of the roll centre over that of the wheel centre. Common practice, no source: independent axles have it near the
 * ground, beams near the housing. Lower means more lean, so the lower of the usual values is taken.
 */
export const ROLL_CENTRE = { independent: 0, beam: 0.9 } as const;

/** Bump stop over spring stiffness: rubber that stops a wheel within about 3 cm at twice its load. Common practice, no source. */
export const BUMP_STOP = 10;

/** Droop stop over spring stiffness: a strap or the damper's end, in effect rigid (a hanging wheel stretches it 0.1 mm). */
export const DROOP_STOP = 100;

/** Greatest ride rate over tyre stiffness that is believed; above it ride frequency and tyre stiffness contradict. */
export const RIDE_RATE_SHARE = 0.75;

/**
 * Part of a tyre's stiffness that stays when its pressure goes to nothing, from the carcass; the rest is proportional
 * to pressure. Common practice, no source. A greater part keeps the belly a few millimetres higher when aired down.
 */
export const CARCASS_SHARE = 0.2;

/** Part of a tyre's radius that is sidewall. Common practice, no source: 0.3 to 0.45 in off-road sizes. */
export const SIDEWALL_SHARE = 0.35;

/** Part of the engine's torque that reaches the wheels in first gear. Common practice, no source: 0.8 to 0.9. */
export const DRIVELINE_EFFICIENCY = 0.8;

/**
 * Torque that turns an engine over with its throttle closed, over its greatest torque: the ratio of two mean effective
 * pressures. Motored with open throttle 0.97 + 0.15 n + 0.05 n² bar at n thousand turns a minute (Barnes-Moss; Heywood,
 * _Internal Combustion Engine Fundamentals_, 1988, eq. 13.6, from memory), 1.2 bar at 1,200; at full load up to 19 bar
 * boosted and 10.5 bar not. The low end, 0.064, rounded down; closing the throttle adds to it. A greater share holds on
 * steeper ground.
 */
export const OVERRUN_SHARE = 0.06;

/** Part of the wheels' torque that reaches an engine on the overrun: what the gears lose helps. The high end of 0.8 to 0.9. */
export const OVERRUN_EFFICIENCY = 0.9;

/** Pace at which an engine is asked to hold a vehicle back, m/s: 6 km/h, a brisk walk. Common practice, no source. */
export const OVERRUN_PACE_MPS = 6 / 3.6;

/**
 * Idle, rad/s: 800 turns a minute, where the fuel that keeps an engine running makes up for all of its drag. From half as
 * much again on it has all of it. Common practice, no source. A gearing too tall for a walk has none at a walk.
 */
export const IDLE_RADPS = (800 * 2 * Math.PI) / 60;

/** What engine traction control leaves of the grip while it has not stood down. Common practice, no source. */
export const ENGINE_TRACTION_LEAVES = 0.8;

/**
 * Share of what a locker would gain that brake traction control gains, by calibration. Common practice, no source;
 * rather low, as wheels must spin before it acts.
 */
export const BRAKE_TRACTION_SHARE = { none: 0, late: 0.3, average: 0.5, early: 0.7 } as const;

/** Torque bias of a limited-slip centre differential, which papers seldom print. Common practice, no source: 1.5 to 3. */
export const CENTRE_BIAS = 1.5;

/** What an on-demand clutch passes of the grip at the rear; it slips and warms up. Common practice, no source. */
export const ON_DEMAND_SHARE = 0.5;

/** Half-width of a differential housing or its guard, metres. Common practice, no source. */
export const HOUSING_HALF_M = 0.12;

/**
 * From where on, as a share of an overhang, its underside may be as low as the approach or departure plane. Common
 * practice, no source: bumpers and hitches limit, and what lies nearer to the tyre is higher.
 */
export const OVERHANG_FROM = 0.75;
