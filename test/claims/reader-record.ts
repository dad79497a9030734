// Four card readers, each as delivered and tuned: copying, an import that takes time, a shell that gets warm, a supply that is set.
import { factsOf, type Row } from './record-of.js';

const readers: Record<string, number[]> = {
  // copy MB/s, import s, shell °C resting and copying, supply V, W
  'amsel/delivered': [84, 62.4, 31, 44, 1.2, 6.1], 'amsel/tuned': [90.3, 56.2, 32, 49, 1.25, 6.9], 'birke/delivered': [92, 60.1, 30, 42, 1.2, 5.2], 'birke/tuned': [95.2, 57.3, 31, 46, 1.25, 5.7],
  'corvin/delivered': [71, 66.8, 29, 40, 1.1, 4.4], 'corvin/tuned': [77.4, 63.5, 30, 45, 1.22, 5.3], 'dorn/delivered': [100, 55.2, 33, 47, 1.25, 7.5], 'dorn/tuned': [102.6, 53.1, 34, 53, 1.3, 8.2],
};
const rows: Row[] = Object.entries(readers).flatMap(([at, [copy, time, rest, warm, volt, watt]]): Row[] => {
  const [a, b] = at.split('/') as [string, string];
  return [
    [a, b, 'copy', 'throughput', 'card', 'load', copy!, 'MB/s', 0.3], [a, b, 'import', 'duration', 'import', 'load', time!, 's', 0.2], [a, b, '', 'temperature', 'shell', 'idle', rest!, 'degC', 0.3], [a, b, 'copy', 'temperature', 'shell', 'load', warm!, 'degC', 0.3],
    [a, b, '', 'voltage', 'supply', 'target', volt!, 'V'], [a, b, 'copy', 'power', 'socket', 'load', watt!, 'W', 0.1],
  ];
});
rows.push(['house', '', '', 'temperature', 'shell', 'limit', 50, 'degC'], ['house', '', '', 'power', 'socket', 'limit', 9, 'W']);

export const readerFacts = factsOf(rows, `kind,id,spoken
setup,house,my limit
setup,amsel,the Amsel
setup,birke,the Birke
setup,corvin,the Corvin
setup,dorn,the Dorn
setting,delivered,as delivered;from the box
setting,tuned,tuned
workload,copy,the copy;copying
workload,import,the import
part,card,card
part,import,the import
part,shell,shell;shells
part,supply,supply
part,socket,socket;at the socket
measure,throughput,copy rate;megabytes a second
measure,duration,time;seconds
measure,temperature,temperature;degrees
measure,voltage,voltage;volts
measure,power,power;watts
`);
