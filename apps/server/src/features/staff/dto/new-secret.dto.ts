import { IsString, Length } from 'class-validator';

export class NewSecretDto {
  @IsString({ message: 'Type the new secret.' })
  @Length(12, 200, { message: 'Choose a new secret of at least 12 letters: three or four words are easy to keep.' })
  newSecret!: string;
}
