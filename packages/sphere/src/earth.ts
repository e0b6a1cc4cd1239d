/** km. Radius of the sphere that stands for the Earth, R0 of Recommendation ITU-R P.533. */
export const EARTH_RADIUS_KM = 6371;

/** km. Exact by definition (International Hydrographic Conference, Monaco 1929). */
export const NAUTICAL_MILE_KM = 1.852;

/** km. All the way round a great circle. */
export const CIRCUMFERENCE_KM = 2 * Math.PI * EARTH_RADIUS_KM;
