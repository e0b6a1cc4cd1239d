/** Baud and Hz of collective FEC, NAVTEX and all narrow-band direct printing. Source: ITU-R M.625-4, M.540-2. */
export const TEXT_BAUD = 100;
export const TEXT_SHIFT_HZ = 170;
