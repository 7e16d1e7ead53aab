/** Which time zones lie south of the equator. */

/** By region; all of these lie south. From the coordinates and the older names of the IANA database, 2025b. */
const WHOLE = ['antarctica', 'australia', 'brazil', 'chile', 'nz', 'nz-chat'];

const PLACES: Readonly<Record<string, string>> = {
  Africa: `Blantyre Brazzaville Bujumbura Dar_es_Salaam Gaborone Harare Johannesburg Kigali Kinshasa Luanda Lubumbashi
    Lusaka Maputo Maseru Mbabane Nairobi Windhoek`,
  America: `Araguaina Argentina Asuncion Bahia Belem Buenos_Aires Campo_Grande Catamarca Cordoba Coyhaique Cuiaba Eirunepe
    Fortaleza Guayaquil Jujuy La_Paz Lima Maceio Manaus Mendoza Montevideo Noronha Porto_Acre Porto_Velho Punta_Arenas
    Recife Rio_Branco Rosario Santarem Santiago Sao_Paulo`,
  Asia: 'Dili Jakarta Jayapura Makassar Pontianak Ujung_Pandang',
  Atlantic: 'South_Georgia St_Helena Stanley',
  Indian: 'Antananarivo Chagos Christmas Cocos Comoro Kerguelen Mahe Mauritius Mayotte Reunion',
  Pacific: `Apia Auckland Bougainville Chatham Easter Efate Enderbury Fakaofo Fiji Funafuti Galapagos Gambier Guadalcanal
    Kanton Marquesas Nauru Niue Norfolk Noumea Pago_Pago Pitcairn Port_Moresby Rarotonga Samoa Tahiti Tongatapu Wallis`,
  US: 'Samoa',
};

const southern: ReadonlySet<string> = new Set(Object.entries(PLACES).flatMap(([region, places]) => (
  places.split(/\s+/).map(place => `${region}/${place}`.toLowerCase()))));

/**
 * Whether the place that a time zone is named after lies south of the equator. False for no zone, and for one without a
 * place, such as UTC.
 *
 * Example: isSouthern('Pacific/Auckland') and isSouthern('America/Argentina/Salta')
 */
export function isSouthern(zone: string | undefined): boolean {
  if (zone === undefined) return false;
  const [region = '', place = ''] = zone.toLowerCase().split('/');
  return WHOLE.includes(region) || southern.has(`${region}/${place}`);
}
