import { BOILING } from './boiling.tool.ts';
import { EXPANSION } from './expansion.tool.ts';
import { FLUSH } from './flush.tool.ts';
import { HEAT } from './heat.tool.ts';
import { HYDROMETER } from './hydrometer.tool.ts';
import { PART_CHANGE } from './part-change.tool.ts';
import { REFRACTOMETER } from './refractometer.tool.ts';
import { STRENGTH } from './strength.tool.ts';
import { TECHNOLOGY } from './technology.tool.ts';
import type { Tool } from './tool.ts';
import { WATER } from './water.tool.ts';

const TOOLS: readonly Tool[] = [FLUSH, STRENGTH, REFRACTOMETER, HYDROMETER, BOILING, EXPANSION, HEAT, PART_CHANGE, TECHNOLOGY, WATER];

export const findTool = (key: string): Tool | undefined => TOOLS.find((tool) => tool.key === key);
