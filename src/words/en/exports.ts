/** Names in the files that leave for other people's programs. */
export const exports = {
  line: (obstacle: number, line: string) => `obstacle ${obstacle}: ${line}`,
  places: 'Places',
  ways: 'Ways',
};
