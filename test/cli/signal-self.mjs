// Loaded before the command (NODE_OPTIONS=--import): it is told of the signal named in SIGNAL_SELF while its first file is written
// aside. A signal from outside comes when it comes, which on a busy machine may be when all is done.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { writeFileSync } = fs;
fs.writeFileSync = (path, ...rest) => {
  writeFileSync(path, ...rest);
  if (/[\\/]\.staging[\\/]/.test(String(path))) process.emit(process.env.SIGNAL_SELF);
};
syncBuiltinESMExports();
