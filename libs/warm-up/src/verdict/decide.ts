import { dataDoubts } from './data-doubts.ts';
import { type Findings, type Opinion } from './findings.ts';
import { letsHeatGo } from './lets-heat-go.ts';
import { notEnough } from './not-enough.ts';
import { regulates } from './regulates.ts';
import { stuckClosed } from './stuck-closed.ts';

/** First opinion that has something to say: bad readings spoil everything else, heat that goes on rising is the most urgent. */
export function decide(findings: Findings): Opinion {
  return dataDoubts(findings) ?? stuckClosed(findings) ?? regulates(findings) ?? letsHeatGo(findings) ?? notEnough(findings);
}
