/** The state of the air that rotors, motors and drag all see. */
export interface Air {
  /** [K] */
  readonly temperature: number;
  /** [Pa] */
  readonly pressure: number;
  /** [kg/m3] */
  readonly density: number;
  /** [Pa s] */
  readonly dynamicViscosity: number;
  /** [m/s] */
  readonly speedOfSound: number;
}

/** Constants of ISO 2533:1975, clause 2 (table 1). */
const G0 = 9.80665; // [m/s2]
const R_AIR = 287.05287; // [J/(kg K)]
const T0 = 288.15; // [K]
const P0 = 101325; // [Pa]
const LAPSE = -0.0065; // [K/m], below 11 000 m
const TROPOPAUSE = 11000; // [m], geopotential
const KAPPA = 1.4; // ratio of specific heats
const SUTHERLAND_BETA = 1.458e-6; // [kg/(m s K^0.5)]
const SUTHERLAND_S = 110.4; // [K]
/** Ratio of the gas constants of dry air and water vapour (CIPM-2007, from memory). */
const EPSILON = 0.62198;

/** Geopotential height from geometric height, ISO 2533 eq. (2): both [m]. */
export function geopotentialHeight(geometricHeight: number): number {
  const nominalEarthRadius = 6356766; // [m], ISO 2533 table 1
  return (nominalEarthRadius * geometricHeight) / (nominalEarthRadius + geometricHeight);
}

export interface AirRequest {
  /** Geopotential height above mean sea level [m], -2000 to 20 000. */
  readonly height: number;
  /** Difference from the standard temperature at that height [K]; pressure stays standard. Default 0. */
  readonly temperatureOffset?: number;
  /** Relative humidity, 0 to 1. Default 0 (the standard is dry). */
  readonly relativeHumidity?: number;
}

/**
 * ISO 2533:1975 standard atmosphere, troposphere and lower stratosphere, with a temperature
 * offset at standard pressure and humid-air density. Use `airOfDay` when the thermometer
 * reading is what is known.
 *
 * Humidity lowers density by the vapour's lower molar mass; saturation pressure by Magnus
 * (WMO-No. 8, annex 4.B), good to 0.1 % between -40 and 50 degC.
 *
 * @throws RangeError outside the height or humidity range
 */
export function standardAtmosphere(request: AirRequest): Air {
  const { height, temperatureOffset = 0, relativeHumidity = 0 } = request;
  if (!(height >= -2000 && height <= 20000)) {
    throw new RangeError(`height must be between -2000 and 20 000 m; found ${height} m`);
  }
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
    throw new RangeError(`relativeHumidity must be between 0 and 1; found ${relativeHumidity}`);
  }
  const standardTemperature = T0 + LAPSE * Math.min(height, TROPOPAUSE);
  const pressureBelow = P0 * (standardTemperature / T0) ** (-G0 / (LAPSE * R_AIR));
  const pressure =
    height <= TROPOPAUSE
      ? pressureBelow
      : pressureBelow * Math.exp((-G0 * (height - TROPOPAUSE)) / (R_AIR * standardTemperature));
  return airAt(standardTemperature + temperatureOffset, pressure, relativeHumidity);
}

/**
 * The air at a height on a day whose temperature is read off a thermometer.
 *
 * @param height geopotential height [m]
 * @param temperature outside temperature [K]
 * @param relativeHumidity 0 to 1
 */
export function airOfDay(height: number, temperature: number, relativeHumidity = 0): Air {
  const standard = standardAtmosphere({ height });
  return standardAtmosphere({
    height,
    temperatureOffset: temperature - standard.temperature,
    relativeHumidity,
  });
}

function airAt(temperature: number, pressure: number, relativeHumidity: number): Air {
  if (!(temperature > 150 && temperature < 350)) {
    throw new RangeError(`temperature must be between 150 and 350 K; found ${temperature} K`);
  }
  const celsius = temperature - 273.15;
  const saturationPressure = 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  const vapour = Math.min(relativeHumidity * saturationPressure, pressure);
  return {
    temperature,
    pressure,
    density: (pressure - (1 - EPSILON) * vapour) / (R_AIR * temperature),
    dynamicViscosity: (SUTHERLAND_BETA * temperature ** 1.5) / (temperature + SUTHERLAND_S),
    speedOfSound: Math.sqrt(KAPPA * R_AIR * temperature),
  };
}
