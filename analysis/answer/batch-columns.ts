import { t } from '../language/t.ts';
import { namedColumns, type NamedColumns } from '../read/named-columns.ts';
import { headerNames } from '../read/recognise.ts';
import { InputError } from '../records/input-error.ts';

/** What a column of a batch may hold. */
export type BatchRole = 'postcode' | 'lat' | 'lon' | 'elevationM' | 'elevationFt' | 'label' | 'customer';

/** Names of columns in English and Spanish, as {@link namedColumns} wants them. */
const NAMES: Readonly<Record<BatchRole, readonly string[]>> = {
  postcode: [
    ...['postcode', 'postalcode', 'postal', 'zip', 'zipcode', 'zip5', 'zcta', 'pc'],
    ...['codigopostal', 'codpostal', 'cpostal', 'cp', 'plz'],
  ],
  lat: ['lat', 'latitude', 'latdeg', 'latitud'],
  lon: ['lon', 'lng', 'long', 'longitude', 'londeg', 'longitud'],
  elevationM: [
    ...[
      'elevationm',
      'elevation',
      'elevm',
      'elev',
      'heightm',
      'height',
      'altitudem',
      'altitude',
      'altm',
      'alt',
    ],
    ...['elevacionm', 'elevacion', 'altitudm', 'altitud', 'alturam', 'altura', 'cota'],
  ],
  elevationFt: [
    ...['elevationft', 'elevft', 'heightft', 'altitudeft', 'altft', 'elevationfeet'],
    ...['elevacionpies', 'altitudpies', 'alturapies'],
  ],
  label: [
    ...['label', 'place', 'placename', 'town', 'city', 'site', 'name'],
    ...['etiqueta', 'lugar', 'localidad', 'municipio', 'poblacion', 'ciudad', 'pueblo', 'sitio', 'nombre'],
  ],
  customer: [
    ...[
      'customerid',
      'customer',
      'customerno',
      'customernumber',
      'clientid',
      'client',
      'account',
      'accountno',
      'id',
    ],
    ...['ref', 'reference', 'idcliente', 'clienteid', 'cliente', 'numcliente', 'numerocliente', 'nocliente'],
    ...['codigocliente', 'cuenta', 'referencia'],
  ],
};
/** Names shown when a file is refused. */
const SHOWN_NAMES = 6;
const LONGEST_SHOWN = 30;

/** Where the columns of a file stand. */
export interface BatchColumns extends NamedColumns<BatchRole> {
  readonly separator: string;
}

/**
 * The columns of a header line, in any order.
 * @throws InputError when there is neither a postcode nor a latitude with a longitude
 */
export function batchColumns(header: string, separator: string, fileName: string): BatchColumns {
  const names = headerNames(header, separator);
  const columns = namedColumns(names, NAMES);
  const { postcode, lat, lon } = columns.at;
  if (postcode === undefined && (lat === undefined || lon === undefined)) throw refused(fileName, names);
  return { separator, ...columns };
}

function refused(fileName: string, names: readonly string[]): InputError {
  const shown = names
    .slice(0, SHOWN_NAMES)
    .map((name) => (name.length > LONGEST_SHOWN ? `${name.slice(0, LONGEST_SHOWN - 3)}...` : name))
    .join(', ');
  return new InputError(
    t`${fileName} has no column to go by: its first line must name a column postcode, or the columns lat and lon (it has ${shown}).`,
  );
}
