import { expect, test } from 'vitest';
import { skeleton } from '../../pipeline/claims/misheard.js';

test.each([['norvane', 'norvein'], ['kelpen', 'kelpin'], ['pellick', 'pelick'], ['brool', 'brule']])('%s sounds like %s', (a, b) => {
  expect(skeleton(a)).toBe(skeleton(b));
});
test.each([['norvane', 'marrow'], ['kelpen', 'tamlow']])('%s does not sound like %s', (a, b) => {
  expect(skeleton(a)).not.toBe(skeleton(b));
});
