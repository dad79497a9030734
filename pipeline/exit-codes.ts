// What the command's exit code says. The README prints the same table (a test compares them).

export const exitCodes = {
  fine: { code: 0, says: 'done; nothing found that counts as an error' },
  findings: { code: 1, says: 'something found in the records or texts counts as an error; nothing was built, unless as a draft' },
  usage: { code: 2, says: 'the command line is not understood, or names an episode, fact or check that there is not' },
  trouble: { code: 3, says: 'a file or folder cannot be read or written: full disk, no permission, another build at work' },
  bug: { code: 4, says: 'a mistake of this program itself' },
  interrupted: { code: 130, says: 'stopped from the keyboard' },
  terminated: { code: 143, says: 'stopped by the system' },
} as const;

/** Something the person at the command line has to put right; printed without a stack. */
export class UsageError extends Error {
  override name = 'UsageError';
}
