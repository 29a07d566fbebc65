import { encode } from "uqr";

/** Modules of empty border that readers need (ISO/IEC 18004). */
const QUIET = 4;

/** A QR code as one SVG path, dark on white in both colour schemes. Level M still reads with a smudge on it. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { data, size } = encode(text, { ecc: "M", boostEcc: false, border: 0 });
  const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : [])));
  const box = `${-QUIET} ${-QUIET} ${size + 2 * QUIET} ${size + 2 * QUIET}`;
  return (
    <div class="qr">
      <svg viewBox={box} role="img" aria-label={label} shape-rendering="crispEdges">
        <path fill="#000" d={dark.join("")} />
      </svg>
    </div>
  );
}
