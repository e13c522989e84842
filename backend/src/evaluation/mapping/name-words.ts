/**
 * Words by which people and instruments call what a point id calls by one word, beside that word itself. Single letters are
 * those of instrument tags (ISA-5.1: T temperature, P pressure, F flow, L level, PD pressure drop; from memory). The rest is
 * common practice, no source.
 */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  supply: ['sup', 'supp', 'spl', 'sply', 'leaving', 'lvg', 'feed', 'vl', 'outgoing'],
  return: ['ret', 'rtn', 'rt', 'back', 'entering', 'ent', 'rl', 'incoming'],
  facility: ['fws', 'fw', 'facil', 'prim', 'primary', 'building', 'bldg', 'chw', 'chilled', 'plantside'],
  loop: ['tcs', 'technology', 'secondary', 'sec', 'process', 'circuit'],
  temperature: ['temp', 'tmp', 'temps', 't', 'tt', 'ti', 'te', 'tit'],
  pressure: ['press', 'prs', 'pr', 'pressures', 'p', 'pt', 'pi', 'pit'],
  drop: ['dp', 'pd', 'pdt', 'dpt', 'pdi', 'delta', 'diff', 'differential', 'deltap', 'difference'],
  flow: ['flw', 'flowrate', 'flows', 'f', 'ft', 'fi', 'fit', 'vflow', 'vdot'],
  level: ['lvl', 'lev', 'levels', 'l', 'lt', 'li', 'lit', 'height'],
  tank: ['tk', 'vessel', 'reservoir', 'res', 'buffer', 'cistern'],
  separator: ['sep', 'separ', 'airsep'],
  filter: ['flt', 'fltr', 'strainer', 'str'],
  pump: ['pmp', 'pu', 'circulator'],
  vacuum: ['vac', 'vacu', 'lrp', 'ejector', 'exhauster'],
  speed: ['spd', 'vfd', 'hz', 'rpm', 'freq', 'frequency'],
  power: ['pwr', 'watt', 'watts', 'load', 'electrical', 'kilowatt'],
  running: ['run', 'runs', 'on', 'active', 'started'],
  command: ['cmd', 'order', 'ordered', 'demand', 'dmd', 'out', 'output'],
  position: ['pos', 'posn', 'feedback', 'fb', 'opening', 'zt'],
  available: ['avail', 'ready', 'healthy'],
  standby: ['stby', 'stdby', 'spare', 'backup', 'lag'],
  valve: ['vlv', 'cv', 'tcv', 'actuator'],
  setpoint: ['sp', 'setp', 'target', 'setpt'],
  found: ['leak', 'leakage', 'rope', 'wet', 'leaks'],
  tray: ['drip', 'pan'],
  inlet: ['suction', 'suct', 'in'],
  discharge: ['disch', 'outlet', 'delivery'],
  conductivity: ['cond', 'ec', 'conduct', 'cnd'],
  ph: ['acidity'],
  turbidity: ['turb', 'turbid', 'ntu'],
  inhibitor: ['inhib', 'inh'],
  copper: ['cu'],
  bacteria: ['cfu', 'germs'],
  humidity: ['hum', 'rh', 'humid', 'moisture'],
  ambient: ['baro', 'barometer', 'barometric', 'atm', 'atmospheric'],
  hall: ['room', 'space', 'air', 'whitespace'],
  mode: ['opmode', 'state'],
  branch: ['rack', 'racks', 'manifold', 'rk'],
  server: ['srv', 'node', 'blade', 'servers', 'host'],
  plate: ['chip', 'chips', 'cpu', 'gpu', 'case', 'coldplate', 'die', 'socket'],
  fan: ['fans', 'blower'],
  isolated: ['isol', 'isolation', 'shut'],
  manual: ['hand', 'local', 'bypass', 'man'],
  vent: ['bleed', 'venting'],
  exhaust: ['exh'],
  seal: ['sealing', 'ring'],
  top: ['topup', 'makeup', 'refill'],
  filling: ['fill'],
  high: ['hi', 'hh'],
  transfer: ['xfer', 'trf'],
  full: ['filled'],
  trap: ['knockout', 'catchpot'],
  unit: ['cdu', 'total'],
};

const conceptByWord = new Map<string, string>([
  ...Object.keys(synonyms).map((concept) => [concept, concept] as const),
  ...Object.entries(synonyms).flatMap(([concept, words]) => words.map((word) => [word, concept] as const)),
]);

/** What a word of a name speaks of; undefined: of nothing that a point is called by. */
export const conceptOf = (word: string): string | undefined => conceptByWord.get(word);

/** The whole of a word in two that are known, such as `rettemp`; null where it is not. Each part has two letters at least. */
export function inTwo(word: string): readonly [string, string] | null {
  for (let at = 2; at <= word.length - 2; at += 1) {
    const [one, other] = [conceptOf(word.slice(0, at)), conceptOf(word.slice(at))];
    if (one !== undefined && other !== undefined) return [one, other];
  }
  return null;
}
