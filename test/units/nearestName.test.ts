import { expect, test } from 'vitest';
import { nearestName } from '../../src/units/nearestName.ts';

test('a slip finds its name, a stranger none', () => {
  const known = ['frame', 'motors', 'propellers', 'pack'];
  expect(nearestName('moters', known)).toBe('motors');
  expect(nearestName('properllers', known)).toBe('propellers');
  expect(nearestName('FRAME', known)).toBe('frame');
  expect(nearestName('parachute', known)).toBeUndefined();
  expect(nearestName('x', [])).toBeUndefined();
  expect(nearestName('g', ['mm', 'm', 'in'])).toBeUndefined();
});

test('two letters changed over count as one slip', () => {
  expect(nearestName('dge', ['deg', 'rad'])).toBe('deg');
});
