// General words for kinds of quantity. They lean towards a measure of that dimension where the record's own names say nothing. Data.
import type { Dimension } from '../quantities/index.js';

const heat: Dimension[] = ['temperature', 'temperature-difference'];
const rows: [Dimension[], string][] = [
  [heat, 'temperature|temp|temps|thermals|heat|warm|hot|cool|warmer|hotter|cooler|coolest|hottest|warmest'],
  [['power'], 'power|draw|draws|drew|drawing|pull|pulls|pulled|pulling|consumption|consumes|consumed|burns|wattage|power draw|eats|sips'],
  [['frame-rate'], 'frame rate|framerate|frames|fps|averages|renders'],
  [['frequency'], 'clock|clocks|clocked|clock speed|frequency|boosts to|boost clock'],
  [['voltage'], 'voltage|volts|core voltage'],
  [['rotation'], 'fan speed|spin|spins|spun|spinning|turns|rpm'],
  [['sound-level'], 'noise|noise level|loud|loudness|sound level|quiet|louder|quieter|loudest|quietest|decibels|dba|silent|hear'],
  [['energy'], 'energy|charge|watt hours'],
  [['duration'], 'lasts|lasted|last for|how long|runtime|run time|battery life|play time'],
  [['mass'], 'weight|weighs|weighed|weigh|heavier|lighter|mass|heaviest|lightest'],
  [['flow'], 'flow|flow rate|flows|flowing'],
  [['flow', 'air-flow'], 'moves|moved|shifts|shifted|pushes|pushed'],
  [['data-rate'], 'transfer rate|throughput|reads at|writes at|bandwidth'],
  [['pressure'], 'pressure|static pressure'],
  [['air-flow'], 'airflow|air flow|air'],
  [['money'], 'price|costs|costing'],
];

export const dimensionWords: readonly (readonly [string, readonly Dimension[]])[] = rows.flatMap(([d, text]) => text.split('|').map((w) => [w, d] as const));
