/**
 * Findings a page shows beside those told first; what is more is counted. A take with faults in every bar of a long étude has
 * half as many. Working value.
 */
export const MOST_SHOWN = 120;
