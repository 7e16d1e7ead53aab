import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeKey, slotOf } from '../../server/src/calendar/place-text.ts';

describe('a place with a slot', () => {
  it('is a container and a slot, as written', () => {
    expect(slotOf('bag 3 slot 2')).toEqual({ container: 'bag 3', slot: '2' });
    expect(slotOf(' Fridge  door SLOT b ')).toEqual({ container: 'Fridge  door', slot: 'b' });
    expect(slotOf('bag3 slot12')).toEqual({ container: 'bag3', slot: '12' });
    expect(slotOf('slot 4')).toEqual({ container: '', slot: '4' });
  });

  it('is not found in any other text', () => {
    for (const text of ['fridge', 'slot', 'bag 3', 'slot machine shelf 3', 'the slot', 'bag 3 slot', 'timeslot 3', '']) {
      expect(slotOf(text), text).toBeUndefined();
    }
  });
});

describe('two places', () => {
  it('are the same whatever their case and blanks, and zeros before the number of the slot', () => {
    for (const same of ['bag 3 slot 2', 'Bag 3 Slot 2', 'bag3 slot2', ' BAG  3  slot  02 ']) expect(placeKey(same), same).toBe(placeKey('bag 3 slot 2'));
    expect(placeKey('Cold Frame')).toBe(placeKey('coldframe'));
  });

  it('are one for a bag or a jar with its number, wherever it is put', () => {
    for (const place of ['fridge bag 1 slot 1', 'Bag 1 slot 01', 'cold frame bag1 slot 1', 'bag 1 (fridge) slot 1']) {
      expect(placeKey(place), place).toBe(placeKey('bag 1 slot 1'));
    }
    expect(placeKey('fridge jar 2')).toBe(placeKey('jar 2'));
    for (const [one, other] of [['fridge shelf 1', 'shed shelf 1'], ['tray 4', 'bench tray 4'], ['fridge bag 1', 'fridge bag 2']]) {
      expect(placeKey(one!), one).not.toBe(placeKey(other!));
    }
  });

  it('are two where the numbers are', () => {
    const places = ['bag 1 slot 11', 'bag 11 slot 1', 'bag 1 1', 'bag 11', 'bag 1', 'bag 1 slot 1', 'slot 1', 'bag 1 slot 10'];
    expect(new Set(places.map(placeKey)).size).toBe(places.length);
  });

  it('stay the same when blanks are put anywhere but within a number or the word slot', () => {
    const word = fc.constantFrom('bag', 'shelf', 'Tin', 'ä', '7', '12');
    const blanks = fc.constantFrom(' ', '  ', '\t');
    fc.assert(fc.property(fc.array(word, { minLength: 1, maxLength: 4 }), blanks, fc.nat(99), (words, blank, slot) => {
      const place = `${words.join(' ')} slot ${slot}`;
      expect(placeKey(`${words.join(blank)}${blank}SLOT${blank}0${slot}`.toUpperCase())).toBe(placeKey(place));
    }));
  });
});
