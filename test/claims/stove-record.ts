// One stove in a shed and in a hut, with three settings of its blower, at rest and while it bakes.
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
// lid and base °C at rest, lid, base and grate °C, W, V, dB(A), rpm
const stoves: [string, string, number, number, number, number, number, number, number, number, number][] = [
  ['shed', 'plain', 31, 35, 112, 131, 148, 412, 5.241, 36.4, 910], ['shed', 'gentle', 30, 34, 101, 117, 139, 318, 4.863, 31.8, 740], ['shed', 'fierce', 33, 38, 121, 146, 160, 463, 5.607, 41.1, 1230],
  ['hut', 'plain', 36, 41, 124, 147, 161, 409, 5.196, 40.7, 1140], ['hut', 'gentle', 34, 39, 109, 128, 147, 315, 4.827, 34.9, 890], ['hut', 'fierce', 39, 45, 139, 168, 179, 459, 5.552, 45.8, 1510],
];
for (const [a, b, li, bi, l, base, grate, w, v, n, f] of stoves) {
  const at = [a, b, 'bake'] as const;
  rows.push([a, b, '', 'temperature', 'lid', 'idle', li, 'degC', 1], [a, b, '', 'temperature', 'base', 'idle', bi, 'degC', 1], [...at, 'temperature', 'lid', 'load', l, 'degC', 1], [...at, 'temperature', 'base', 'load', base, 'degC', 1], [...at, 'temperature', 'grate', 'load', grate, 'degC', 1], [...at, 'power', 'coil', 'load', w, 'W', 0.5], [...at, 'voltage', 'coil', 'load', v, 'V', 0.002], [...at, 'noise', 'stove', 'load', n, 'dB(A)', 0.1], [...at, 'fan_speed', 'blower', 'load', f, 'rpm', 10], [...at, 'temperature', 'room', 'load', 19, 'degC', 0.1]);
}
for (const a of ['shed', 'hut']) rows.push([a, 'plain', '', 'power', 'coil', 'limit', 430, 'W'], [a, 'plain', '', 'temperature', 'base', 'limit', 180, 'degC']);

export const stove = factsOf(rows, `kind,id,spoken
setup,shed,the shed
setup,hut,the hut
setting,plain,plain;as it comes
setting,gentle,gentle;the gentle setting
setting,fierce,fierce;the fierce setting
workload,bake,the bake;baking
part,lid,lid
part,base,base
part,grate,grate
part,coil,coil
part,stove,stove
part,blower,blower
part,room,room
measure,temperature,temperature
measure,power,power
measure,voltage,voltage
measure,noise,noise
measure,fan_speed,speed
`);
