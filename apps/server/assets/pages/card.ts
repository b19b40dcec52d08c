import { endOffers, showClocks } from '../tablet/show-clocks.ts';
import { showKeypad } from '../tablet/show-keypad.ts';
import { showVerdict } from '../tablet/show-verdict.ts';

showKeypad();
showVerdict();
showClocks();
endOffers();
