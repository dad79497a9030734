import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { takeLock } from '../../pipeline/files/index.js';
import { place, scratch } from './scratch.js';

test('a lock is held once and given back', () => {
  const folder = scratch();
  const letGo = takeLock(folder);
  expect(() => takeLock(folder)).toThrow(new RegExp(`^Cannot build into .*: another build \\(process ${process.pid}\\) is writing there\\.$`));
  letGo();
  takeLock(folder)();
  expect(fs.readdirSync(folder)).toEqual([]);
});

test('the lock of a living process holds, and of one that was killed it does not', async () => {
  const folder = scratch();
  const child = spawn(process.execPath, ['-e', `
    const fs = require('node:fs');
    const start = fs.readFileSync('/proc/self/stat', 'utf8').split(') ')[1].split(' ')[19];
    fs.writeFileSync(process.argv[1], process.pid + ' ' + start + '\\n');
    console.log('ready');
    setInterval(() => {}, 1000);
  `, join(folder, '.lock')], { stdio: ['ignore', 'pipe', 'inherit'] });
  await once(child.stdout!, 'data');
  expect(() => takeLock(folder)).toThrow(`another build (process ${child.pid})`);
  child.kill('SIGKILL');
  await once(child, 'exit');
  takeLock(folder)();
});

test('a number that went to another process since is no lock; nor is rubbish', () => {
  const folder = scratch({ '.lock': `${process.ppid} 1\n` });
  takeLock(folder)();
  for (const rubbish of ['', 'rubbish', '-1 5', '99999999 1']) {
    place(folder, '.lock', rubbish);
    takeLock(folder)();
  }
  expect(fs.readdirSync(folder)).toEqual([]);
});

test('the number of no process at all', () => {
  const gone = spawnSync(process.execPath, ['-e', '0']).pid;
  const folder = scratch({ '.lock': `${gone} ?\n` });
  takeLock(folder)();
});
