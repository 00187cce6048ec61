import { describe, expect, it } from 'vitest';
import { obstaclesOf } from '../../src/assess/obstacles.ts';
import { contextOf, type Variation } from './fit/variations.ts';

const named = (variation: Variation) => obstaclesOf(contextOf(variation).craft).map(({ name }) => name);

describe('what a blade could strike', () => {
  it('is the plates, since discs turn at the height of the stack, and not the pack over them', () => {
    expect(named({})).toEqual(['the bottom plate', 'the top plate', 'the flying camera']);
  });

  it('is a camera brought down to the discs', () => {
    const low = named({
      build: (b) => {
        if (b.cameras[1]) b.cameras[1].place = { x: 0.04, y: 0, z: -0.03 };
      },
    });
    expect(low).toContain('the recording camera');
  });

  it('is the pack underneath when the propellers are there too', () => {
    const below = (propellers: 'above' | 'below') =>
      named({
        build: (b) => {
          b.pack.side = 'below';
          b.propellers.side = propellers;
        },
      });
    expect(below('below')).toContain('the pack');
    expect(below('above')).not.toContain('the pack');
  });

  it('is a ring round each propeller of a guarded frame', () => {
    const rings = obstaclesOf(contextOf({ demo: 'guarded/dotterel' }).craft).filter(
      ({ shape }) => shape === 'ring',
    );
    expect(rings).toHaveLength(4);
  });
});
