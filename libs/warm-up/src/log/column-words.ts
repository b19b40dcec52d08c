import { type Quantity } from './quantity.ts';

/** How a column's name gives away what it holds. Earlier lines win; `score` ranks columns that claim the same quantity. */
export interface ColumnWord {
  quantity: Quantity;
  words: RegExp;
  score: number;
}

/** Other things that are named alike. */
export const NOT_THESE =
  /inverter|battery|motor (?!temp)|transmission|gear ?box|charger|desired|target|commanded|setpoint|voltage|volt\b|\braw\b|sensor [ab] volt|level|pressure|switch|duty|average|avg|maximum|\bmax\b|\bmin\b|x ?1000|wheel|turbine|shaft|\bfan\b|since|with mil|error|limit|egr|exhaust|catalyst|oil|fuel (?!.*engine load)|trim|timing/;

/** English first; then the names that German, French, Spanish, Italian, Portuguese and Dutch loggers use. */
export const COLUMN_WORDS: readonly ColumnWord[] = [
  { quantity: 'coolant', score: 9, words: /engine coolant temp|\bect\b/ },
  { quantity: 'coolant', score: 8, words: /coolant temp|coolant c\b|temp(erature)? coolant/ },
  { quantity: 'coolant', score: 6, words: /^engine coolant$|^coolant$|water temp|^c temp$|^clt$|^engine temp(erature)?$/ },
  {
    quantity: 'coolant',
    score: 6,
    words: /kuhlmittel|kuehlmittel|refroidissement|refrigerante|raffreddamento|arrefecimento|koelvloeistof/,
  },
  { quantity: 'intake', score: 9, words: /intake air temp|intake temp|\biat\b|inlet air temp|air intake temp/ },
  { quantity: 'intake', score: 7, words: /^intake( c)?$|ansaugluft|admission|aspirazione|admision|admissao/ },
  { quantity: 'ambient', score: 9, words: /ambi[ae]nt|outside|outdoor|external air/ },
  { quantity: 'ambient', score: 7, words: /aussentemp|umgebung/ },
  { quantity: 'rpm', score: 9, words: /engine rpm|engine speed|^rpm$|\brpm\b|drehzahl|regime moteur/ },
  { quantity: 'speed', score: 9, words: /vehicle speed|speed obd|obd speed|road speed|^speed$|^vss$|^mph$|^kph$|^km h$|^kmh$/ },
  { quantity: 'speed', score: 7, words: /^car speed|^speed |geschwindigkeit|vitesse|velocidad|velocita|snelheid|^velocity/ },
  { quantity: 'speed', score: 5, words: /gps speed|speed gps|speed .*gps/ },
  { quantity: 'load', score: 9, words: /engine load|calculated (engine )?load|calc(ulated)? load|^load$|^load pct$|motorlast/ },
  { quantity: 'load', score: 4, words: /absolute load|load absolute/ },
  { quantity: 'airFlow', score: 9, words: /mass air ?flow|air flow rate|\bmaf\b|luftmasse/ },
];

/** Where the car went: never kept. Road speed measured by satellite is no place. */
export const LOCATION_WORDS =
  /\blat\b|latitude|\blon\b|\blng\b|\blong\b|longt?itude|altitude|\balt\b|bearing|heading|address|\bstreet\b|\bcity\b|gps (?!speed)|^gps$|\bgeo|location|\bplace\b|coordinates?|\bhdop\b|\bcourse\b/;

/** Columns that can serve as the clock, best first. */
export const TIME_WORDS: readonly { words: RegExp; score: number }[] = [
  {
    words: /^(elapsed|relative|log|session) ?time|^time since start|^time elapsed|^elapsed( s| sec| seconds| ms| min| minutes)?$/,
    score: 10,
  },
  { words: /^time( s| sec| seconds| ms| min| minutes)?$|^minutes?$|^t$|^seconds?$|^ms$|^millis(econds)?$|^sec$|^secs$|^t s$/, score: 9 },
  {
    words:
      /^(device|local|system|date|clock)? ?time( stamp)?$|^timestamp( ms| s)?$|^date ?time$|^time of day|^zeit(stempel)?$|^uhrzeit$|^hora$|^heure$|^temps$/,
    score: 8,
  },
  { words: /^gps time$|^utc( time)?$|^epoch/, score: 6 },
  { words: /engine run ti[mn]e|run ?time|runtime|time since engine start/, score: 5 },
];

export const LONG_NAME_WORDS = /^(pid|parameter|param|signal|channel|sensor|name|label|measurement|description|item)( name)?$/;
export const LONG_VALUE_WORDS = /^(value|reading|val|data)$/;
export const LONG_UNIT_WORDS = /^(units?|einheit)$/;
