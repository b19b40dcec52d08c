import { IsString, Length } from 'class-validator';
import { NewSecretDto } from './new-secret.dto.ts';

export class OwnSecretDto extends NewSecretDto {
  @IsString({ message: 'Type your secret so far.' })
  @Length(1, 200, { message: 'Type your secret so far.' })
  oldSecret!: string;
}
