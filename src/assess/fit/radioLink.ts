/**
 * Free-space basic transmission loss [dB], ITU-R P.525-5 equation 4: 32.4 + 20 log10(f/MHz) + 20 log10(d/km).
 *
 * @param distance [m], > 0, far beyond a wavelength
 * @param frequency [Hz], > 0
 */
export function freeSpaceLoss(distance: number, frequency: number): number {
  return 32.4 + 20 * Math.log10(frequency / 1e6) + 20 * Math.log10(distance / 1e3);
}

/** One way of a radio link in free air, antennas facing each other. */
export interface RadioLink {
  /** Into the sender's antenna [W]. */
  readonly power: number;
  /** Of both antennas together [dBi]. */
  readonly gains: number;
  /** Weakest signal the receiver follows [dBm]. */
  readonly sensitivity: number;
  /** [Hz] */
  readonly frequency: number;
}

/** What the received signal has over the sensitivity at a distance [dB]. */
export function linkMargin(link: RadioLink, distance: number): number {
  const sent = 10 * Math.log10(link.power / 1e-3);
  return sent + link.gains - freeSpaceLoss(distance, link.frequency) - link.sensitivity;
}
