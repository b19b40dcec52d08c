import { type DecimalString, formatAmount, placeStyles } from '#libs/money';

const STYLE = { ...placeStyles['en-IE'], places: 2, currencyText: null };

/** An amount alone, for columns and lines that name the currency once. @example amountText('1234.5') // '1,234.50' */
export const amountText = (amount: DecimalString): string => formatAmount(amount, STYLE);

/** @example moneyText('1234.5', 'EUR') // 'EUR 1,234.50' */
export const moneyText = (amount: DecimalString, currency: string): string => formatAmount(amount, { ...STYLE, currencyText: currency });
