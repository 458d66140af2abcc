/** What is said before every convoy sets off. Common practice, no source; local rules and trained people come first. */
export const cautions: readonly string[] = [
  'These verdicts are worked out from what was measured and entered. Ground, weather, tyres and drivers change: walk each obstacle first, and when in doubt do not go.',
  'Rules of the place, closures and the people who look after the land come before anything printed here. So does the advice of someone trained who stands there.',
  'Flowing water: nobody drives or wades into water whose bed and depth are not known, or that is rising. Turning back is always a line.',
  'One vehicle on an obstacle at a time. Nobody stands below it, beside it on a side slope, or between it and anything it could roll against.',
  'Pulling a vehicle out: only on rated points with rated gear, never on a tow ball; everybody out of reach of the rope; one trained person speaks.',
  'Rain, or vehicles ahead, can change every verdict: measure again.',
];
