import type { Classification } from '../classification.ts';

/**
 * Four levels: Easy, Medium, Difficult, Very difficult. What is published of them are words: "all wheel drive and high
 * range 4WD, novice drivers; mostly unsealed roads with no obstacles and minor gradients" · "mainly high range 4WD but low
 * range required, some experience or training; some steep, rocky, slippery or sandy sections, may have shallow water" ·
 * "significant low range 4WD with standard ground clearance, should have training; frequent steep ... sections, possible
 * water crossings" · "low range 4WD with high ground clearance, experienced drivers; frequent very steep ... sections".
 * Tracks are classified in dry conditions; most Medium ones and harder become more difficult in wet weather.
 *
 * The trials are our reading of those words. "Standard" are both the wagon and the utility, so that neither kind is misled.
 * Treads are as a member club's page quotes the policy, second hand.
 *
 * An obstacle that takes low range is Medium, as the words have it, but only where a standard vehicle then goes without care.
 */
export const AUSTRALIA: Classification = {
  id: 'australia',
  source: {
    organisation:
      'Australian National Four Wheel Drive Council, after Parks Victoria, the state land department and Four Wheel Drive Victoria',
    title: 'National 4WD Track Classification Policy',
    year: 2021,
    address: 'https://www.aftermarket.com.au/new-national-4wd-track-classification-policy-introduced/',
  },
  levels: [
    {
      trials: [
        { vehicle: 'soft-roader', gear: 'high', tyresDown: false, care: false },
        { vehicle: 'utility', gear: 'high', tyresDown: false, care: false },
      ],
      tyres: 'road',
    },
    {
      trials: [
        { vehicle: 'wagon', gear: 'low', tyresDown: false, care: false },
        { vehicle: 'utility', gear: 'low', tyresDown: false, care: false },
      ],
      tyres: 'road',
    },
    {
      trials: [
        { vehicle: 'wagon', gear: 'low', tyresDown: false, care: true },
        { vehicle: 'utility', gear: 'low', tyresDown: false, care: true },
      ],
      tyres: 'all-terrain',
    },
    {
      trials: [{ vehicle: 'raised wagon', gear: 'locked', tyresDown: true, care: true }],
      tyres: 'mud-terrain',
    },
  ],
};
