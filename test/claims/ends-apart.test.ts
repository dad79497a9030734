// Two figures set against each other, and how far apart they lie: of which two, and of whom it is told.
import { readerFacts } from './reader-record.js';
import { rightAndWrong } from './right-and-wrong.js';

rightAndWrong(readerFacts, [
  ['of a whole row from end to end, and not of its last two', 'The import, tuned: 53.1 seconds with the Dorn, 56.2 with the Amsel, 57.3 with the Birke and 63.5 with the Corvin, so N seconds from best to worst.', '10.4', '12.9'],
  ['told of the first, and so is what comes after', 'The Corvin tuned draws less than the Birke as delivered does with the copy, oddly. But the Dorn tuned draws more than the Amsel as delivered: 8.2 watts against 6.1, so 2.1 watts. And it is N degrees warmer on the shell.', '9', '15', 'open'],
  ['where a change leads, told of where it ends', 'From the box to tuned, copying, the Amsel goes from 84 to N megabytes a second, so 6.3 more.', '90.3', '93.0'],
]);
