/** What may hurt someone at any test. The first step of each; part of every record. */
export const guidedCautions: readonly string[] = [
  'Local codes, the maker’s instructions and licensed practice come first; where they say otherwise, they hold. Ebbline only watches and is no safety system.',
  'This test asks nobody to vent a loop, to break a line or to stop the vacuum source: it measures in a state that your own procedure has brought about. Where a margin or water alarm comes, cancel it and follow the alarm.',
  'Vacuum vessels and sight glasses can burst inward: eye protection on, no knock and no work on glass under vacuum.',
  'Water that is trapped between shut valves warms, expands and may come out hot and under pressure; leave it a way to a tank.',
  'Loop water may hold biocide and inhibitor: gloves and goggles at drains, traps and sight glasses.',
  'Vacuum exhaust and seal-water vents carry aerosol of the loop’s water, in which legionella can grow: they end outdoors, and nobody breathes at them.',
  'Lock out and tag what could start or open by itself before hands are near.',
  'Water near live equipment: know where the isolators are, and keep trays and leak ropes working.',
];
