import { IsNotIn, IsString, Length, Matches } from 'class-validator';

const LENGTHS = [4, 5, 6, 7, 8];
const CHOOSE = 'Choose 4 to 8 digits, not all the same and not in a row.';

/** All the same, or counted up or down: the first that anybody tries. */
const EASY: readonly string[] = LENGTHS.flatMap((length) => [
  ...Array.from({ length: 10 }, (_, digit) => String(digit).repeat(length)),
  ...['01234567890', '09876543210'].flatMap((row) =>
    Array.from({ length: row.length - length + 1 }, (_, start) => row.slice(start, start + length)),
  ),
]);

export class OwnPinDto {
  @IsString({ message: 'Type your secret.' })
  @Length(1, 200, { message: 'Type your secret.' })
  oldSecret!: string;

  @Matches(/^\d{4,8}$/, { message: CHOOSE })
  @IsNotIn(EASY, { message: CHOOSE })
  pin!: string;
}
