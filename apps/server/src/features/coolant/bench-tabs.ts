import { urls } from '../../web/urls.ts';

export interface TabView {
  readonly href: string;
  readonly label: string;
  readonly current: boolean;
}

const TABS = [
  { tool: '', label: 'Refill' },
  { tool: 'flush', label: 'Flush' },
  { tool: 'strength', label: 'Strength' },
  { tool: 'refractometer', label: 'Refractometer' },
  { tool: 'hydrometer', label: 'Hydrometer' },
  { tool: 'boiling', label: 'Boiling' },
  { tool: 'expansion', label: 'Expansion' },
  { tool: 'heat', label: 'Heat carrying' },
  { tool: 'part-change', label: 'Part change' },
  { tool: 'technology', label: 'Technology and life' },
  { tool: 'water', label: 'Water' },
] as const;

const toolUrl = (tool: string): string => (tool === '' ? urls.coolantBench : urls.coolantTool(tool));

/** What lies on the bench: links, so that each works without script. */
export const benchTabs = (current: string): readonly TabView[] =>
  TABS.map(({ tool, label }) => ({ href: toolUrl(tool), label, current: tool === current }));
