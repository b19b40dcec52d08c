import { applyDecorators } from '@nestjs/common';
import { Transform, Type } from 'class-transformer';
import { IsObject, IsOptional, ValidateNested } from 'class-validator';

type PartType = () => new () => object;

/** A property that is an object of its own kind; `@ValidateNested` alone would let a list through. */
export const Part = (type: PartType, message: string): PropertyDecorator =>
  applyDecorators(IsObject({ message }), ValidateNested(), Type(type));

/** The same, where it may be left out; null says so too. */
export const OptionalPart = (type: PartType): PropertyDecorator =>
  applyDecorators(
    IsOptional(),
    Transform(({ value }: { value: unknown }) => value ?? undefined),
    Part(type, 'Send an object here, or leave it out.'),
  );
