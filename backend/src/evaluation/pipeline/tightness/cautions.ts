/** What may hurt someone at a pressure-rise test. Part of every list and record. */
export const tightnessCautions: readonly string[] = [
  'Local codes, the maker’s instructions and licensed practice come first; Ebbline only watches and is no safety system.',
  'Load off and plates cool first: while the loop stands, nothing carries the heat of the chips away.',
  'Keep the vacuum: neither vent the loop nor break a line for this test. Where a margin or water alarm comes, end the test and let the vacuum source run.',
  'Vacuum vessels and sight glasses can burst inward: eye protection on, no knock and no work on glass under vacuum.',
  'Lock out and tag the vacuum source and its valve before hands are near, so that it can not start by itself.',
  'Water that is trapped between shut valves warms, expands and may come out hot and under pressure; leave it a way to a tank.',
  'Loop water may hold biocide and inhibitor: gloves and goggles at drains, traps and sight glasses.',
  'Vacuum exhaust and seal-water vents carry aerosol of the loop’s water, in which legionella can grow: they end outdoors, and nobody breathes at them.',
  'Water near live equipment: know where the isolators are, and keep trays and leak ropes working.',
];
