declare module 'js-quantities' {
  interface Quantities {
    to(unit: string): Quantities;
    readonly scalar: number;
  }
  export default function Qty(text: string): Quantities;
}
