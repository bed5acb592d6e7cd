/** Names of the substances that a gas can be mixed of. */
export const COMPONENTS: readonly string[] = [
  'air',
  'burnt',
  'charge',
  'fuel vapour',
  'nitrogen',
  'oxygen',
  'argon',
  'carbon dioxide',
  'water vapour',
];
