import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { findVessel } from './find-vessel.ts';

describe('vessels in the words people have for them', () => {
  it.each([
    ['31 US gal trash can,', 'galvanised-can-31-gal'],
    ['55 gallon steel barrel', 'drum-55-gal-open'],
    ['my old 30 gallon barrel', 'drum-30-gal'],
    ['20 gallon garbage can', 'galvanised-can-20-gal'],
    ['5 gallon metal bucket', 'pail-5-gal'],
    ['an old 20 lb propane tank', 'propane-cylinder-20-lb'],
  ])('"%s" is %s', (said, id) => expect(findVessel(said).id).toBe(id));

  it.each([
    ['30 gallon garbage can', 'galvanised-can-31-gal'],
    ['75 L', 'galvanised-can-20-gal'],
    ['55 gal', 'drum-55-gal-open'],
    ['18 litre tin', 'pail-5-gal'],
    ['58 L barrel', 'drum-60l'],
    ['dust bim', 'galvanised-can-31-gal'],
  ])('near "%s" stands %s first', (said, id) => {
    try {
      expect.fail(`${findVessel(said).id} was found`);
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
      expect(error.example).toBe(id);
      expect(findVessel(error.example).id).toBe(id);
    }
  });
});
