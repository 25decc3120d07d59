/** A currency of ISO 4217 and the number of decimals of its smallest coin. */
export interface Currency {
  readonly code: string;
  readonly digits: number;
}

/** Codes of ISO 4217 by minor units, as the standard lists them; codes without minor units (metals, funds) are left out. */
const codesByDigits: Readonly<{ [digits: number]: string }> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  2: 'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD YER ZAR ZMW',
  3: 'BHD IQD JOD KWD LYD OMR TND',
};

const digitsByCode = new Map(Object.entries(codesByDigits).flatMap(([digits, codes]) => codes.split(' ').map((code) => [code, Number(digits)] as const)));

export function currencyOf(code: string): Currency | undefined {
  const digits = digitsByCode.get(code);
  return digits === undefined ? undefined : { code, digits };
}

/** Used while a file names no currency: two decimals, and no code is shown. */
export const unnamedCurrency: Currency = { code: '', digits: 2 };
