/** What stands before the decimals in the language of this device: spreadsheets of that language read it. */
export const decimalSignOf = (language: string): "." | "," =>
  new Intl.NumberFormat(language).format(0.5).includes(",") ? "," : ".";
