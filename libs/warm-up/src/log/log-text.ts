import { type Chosen } from './choose-columns.ts';
import { type DropAccount } from './dropped-rows.ts';
import { type Header } from './find-header.ts';
import { type Lines } from './lines.ts';
import { type LogAnswers } from './types.ts';

/** A file in lines, with what its header told. */
export interface LogText {
  lines: Lines;
  header: Header;
  chosen: Chosen;
  answers: LogAnswers;
  dropped: DropAccount;
}
