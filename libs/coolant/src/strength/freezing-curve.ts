import { ASHRAE_FREEZING } from '../data/ashrae-freezing.ts';
import { type Glycol } from '../glycol.ts';
import { item } from '../numeric/item.ts';
import { linearTable } from '../numeric/linear-table.ts';
import { pchip } from '../numeric/pchip.ts';

/** The published table of one glycol, made continuous. */
interface FreezingCurve {
  readonly endMassPercent: number;
  readonly endVolumePercent: number;
  readonly endFreezingPointC: number;
  readonly freezingPointC: (volumePercent: number) => number;
  readonly volumePercentOfFreezingPoint: (freezingPointC: number) => number;
  readonly massPercentOfVolume: (volumePercent: number) => number;
  readonly volumePercentOfMass: (massPercent: number) => number;
}

function curveOf(glycol: Glycol): FreezingCurve {
  const rows = ASHRAE_FREEZING[glycol];
  const end = item(rows, rows.length - 1);
  const mass = rows.map((row) => row.massPercent);
  const volume = rows.map((row) => row.volumePercent);
  const freezing = pchip(
    volume,
    rows.map((row) => row.freezingPointC),
  );
  return {
    endMassPercent: end.massPercent,
    endVolumePercent: end.volumePercent,
    endFreezingPointC: end.freezingPointC,
    freezingPointC: freezing.at,
    volumePercentOfFreezingPoint: freezing.whereFallingTo,
    massPercentOfVolume: linearTable(volume, mass),
    volumePercentOfMass: linearTable(mass, volume),
  };
}

/**
 * Freezing point, mass % and volume % of a mixture, each from the other, inside the published table.
 *
 * Freezing point against volume % is monotone interpolation (PCHIP); mass % against volume % is read between the rows
 * by straight lines, because the two columns are all but proportional and rounded to 0.1. Source: see the table.
 */
export const FREEZING_CURVE: Readonly<Record<Glycol, FreezingCurve>> = {
  ethylene: curveOf('ethylene'),
  propylene: curveOf('propylene'),
};
