/** What every page that could lead to an action on a vehicle says, in one place and in the same words. */
export const CAUTIONS: { title: string; text: string }[] = [
  {
    title: 'A verdict is about a reading',
    text: 'It says whether a deviation more likely comes from the setting of a gauge or from the body. It is never a clearance of the structure.',
  },
  {
    title: 'Likely gauge means: re-hang and read again',
    text: 'It never means that there is no damage. Only a new setup, read again, can show that a first one was set wrong.',
  },
  {
    title: 'The vehicle maker’s procedure comes first',
    text: 'Body repair follows the vehicle maker’s repair procedure, local code and the judgement of a licensed or certified person. Where they and this program differ, follow them.',
  },
  {
    title: 'Center section first',
    text: 'If lengths or diagonals of the center section are out, the datum is not to be trusted and no height of that round is decided.',
  },
  {
    title: 'Gauges',
    text: 'A gauge that was dropped or looks bent is out of service until it is verified. Pointers of equal length, the same tip at both ends, the same fixed mark on every gauge.',
  },
  {
    title: 'A tape alone is a quick check',
    text: 'Its uncertainty is larger than a tram gauge’s; it is never the final record.',
  },
  {
    title: 'Hazards in the bay',
    text: 'A lifted vehicle, a pull under load and a hanging gauge can injure. Secure the vehicle, stand clear of chains under load, and take the gauges off before pulling.',
  },
];
