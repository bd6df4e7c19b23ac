// A chart as a picture to keep: SVG or PNG, with its title, sentence, source and date in it, and the typeface.

const PICTURE_WIDTH = 1600;
const PICTURE_MARGIN = 60;

/**
 * Save a chart. `chart` is what is shown (chart.js), `lines` what stands under it above the day, `face` the rule that
 * carries the typeface: an image knows no fonts of the page.
 */
export async function savePicture(plotly, chart, { title, lines, face, kind }) {
  const svg = await drawPicture(plotly, chart, { title, lines, face });
  const name = `${title.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "")}.${kind}`;
  const blob = kind === "svg" ? new Blob([svg], { type: "image/svg+xml" }) : await rasterised(svg);
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

export async function drawPicture(plotly, chart, { title, lines, face }) {
  const { sentence = "", key = "" } = chart.words;
  const { data, layout } = structuredClone(chart.figure);
  const height = Math.max(520, Math.round(chart.natural * 1.6));
  const url = await plotly.toImage(
    { data, layout: { ...layout, title: undefined, width: PICTURE_WIDTH / 1.6, height: height / 1.6 } },
    { format: "svg", width: PICTURE_WIDTH / 1.6, height: height / 1.6 },
  );
  const inner = decodeURIComponent(url.slice(url.indexOf(",") + 1));
  const told = [
    [title, 40, 650, "#title"],
    ...wrapped(sentence, 62).map((line) => [line, 32, 500]),
  ];
  const day = new Date().toLocaleDateString("en-CA");
  const foot = [key, ...lines, day].filter(Boolean).map((line) => [line, 22, 400]);
  const top = PICTURE_MARGIN + told.reduce((sum, [, size]) => sum + size * 1.4, 0);
  const whole = top + height + foot.length * 32 + PICTURE_MARGIN;
  const paper = layout.paper_bgcolor;
  const ink = layout.font.color;
  let y = PICTURE_MARGIN;
  const text = ([line, size, weight]) => {
    y += size * 1.4;
    return `<text x="${PICTURE_MARGIN}" y="${y - size * 0.4}" font-size="${size}" font-weight="${weight}">${escaped(line)}</text>`;
  };
  const head = told.map(text).join("");
  const body = inner.replace("<svg ", `<svg x="0" y="${top}" `).replace(/width="[\d.]+" height="[\d.]+"/, `width="${PICTURE_WIDTH}" height="${height}"`);
  y = top + height;
  const tail = foot.map(text).join("");
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${PICTURE_WIDTH}" height="${whole}" viewBox="0 0 ${PICTURE_WIDTH} ${whole}">`
    + `<style>${face}</style><rect width="100%" height="100%" fill="${paper}"/>`
    + `<g font-family="Figtree, system-ui, sans-serif" fill="${ink}">${head}</g>${body}`
    + `<g font-family="Figtree, system-ui, sans-serif" fill="${ink}">${tail}</g></svg>`;
}

async function rasterised(svg) {
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  await image.decode();
  const canvas = Object.assign(document.createElement("canvas"), { width: image.width * 2, height: image.height * 2 });
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  URL.revokeObjectURL(image.src);
  return new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
}

function wrapped(text, length) {
  const lines = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < length) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Text is text, in SVG too. */
function escaped(text) {
  return text.replace(/[&<>"]/g, (character) => `&#${character.charCodeAt(0)};`);
}
