import { expect, test } from 'vitest';
import { canonical, renumberIds } from '../../pipeline/theme/index.js';

test('ids and all references to them move together, in order of appearance', () => {
  const svg = '<svg aria-labelledby="title alt"><title id="title"/><desc id="alt"/><clipPath id="clip7"/><g clip-path="url(#clip7)"/><use href="#alt"/><a href="#elsewhere"/></svg>';
  expect(renumberIds(svg, 'core')).toBe('<svg aria-labelledby="core-1 core-2"><title id="core-1"/><desc id="core-2"/><clipPath id="core-3"/><g clip-path="url(#core-3)"/><use href="#core-2"/><a href="#elsewhere"/></svg>');
});

test('the process’s own numbering leaves no trace', () => {
  const of = (n: number): string => `<g><clipPath id="clip${n}"/><g clip-path="url(#clip${n})"/></g>`;
  expect(renumberIds(of(0), 'a')).toBe(renumberIds(of(41), 'a'));
});

test('canonical JSON does not depend on the order of keys', () => {
  expect(canonical({ b: [1, { d: 1, c: 2 }], a: null })).toBe(canonical({ a: null, b: [1, { c: 2, d: 1 }] }));
  expect(canonical([2, 1])).not.toBe(canonical([1, 2]));
});
