/** Exact by definition (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;

/** Exact by definition: the international mile. */
export const KM_PER_MILE = 1.609344;
