/** The order of the convoy, and why each vehicle stands where it does. */
export const order = {
  needsHelp: 'needs help somewhere whatever its place',
  needsEarlier: 'would need an earlier place to go unaided',
  upTo: (passes: number) => `goes unaided up to ${passes} ${passes === 1 ? 'pass' : 'passes'} before it`,
  anyPlace: 'goes unaided at any place',
  leads: (reason: string) => `leads: can pull, and ${reason}`,
  last: (reason: string) => `last: can pull whoever is left, and ${reason}`,
};
