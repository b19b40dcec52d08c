/** The readings of one quantity in its base unit by row, with the time of each; NaN in `values` where there is none. */
export interface Track {
  timesS: Float64Array;
  values: Float64Array;
}
