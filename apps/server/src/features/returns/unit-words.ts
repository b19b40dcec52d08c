import { UNIT_PLACE_WORDS, type UnitPlace } from '#libs/unit-life';

/** A place inside a sentence. @example placeWord('to-return') // 'to return' */
export const placeWord = (place: UnitPlace): string => UNIT_PLACE_WORDS[place].toLowerCase();
