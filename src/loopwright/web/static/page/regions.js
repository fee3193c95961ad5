// Which sections of a garment lie where in its picture, and a veil over those that are not meant.
const known = new Map(); // by address: the numbers of the pixels

const numbersOf = (address) => {
  if (!known.has(address)) known.set(address, read(address));
  return known.get(address);
};

const read = async (address) => {
  const image = new Image();
  image.src = address;
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  pen.drawImage(image, 0, 0);
  const points = pen.getImageData(0, 0, canvas.width, canvas.height).data;
  const numbers = new Uint8Array(canvas.width * canvas.height);
  for (let place = 0; place < numbers.length; place += 1) numbers[place] = points[4 * place];
  return { numbers, width: canvas.width, height: canvas.height };
};

const VEIL = [251, 251, 250, 190]; // paper
const THIN_VEIL = [251, 251, 250, 90];
const LINE = [31, 32, 33, 255]; // ink

export const regionsOf = (figure) => {
  const sections = JSON.parse(figure.dataset.places);
  const canvas = document.createElement("canvas");
  let map = null;
  const ready = numbersOf(figure.dataset.map).then((read) => {
    map = read;
  }, () => {}); // without it the bars and the fields still take a lot

  const at = (x, y) => {
    const box = figure.querySelector("img").getBoundingClientRect();
    const column = Math.floor(((x - box.left) / box.width) * (map?.width ?? 0));
    const row = Math.floor(((y - box.top) / box.height) * (map?.height ?? 0));
    if (!map || column < 0 || row < 0 || column >= map.width || row >= map.height) return [];
    return sections[map.numbers[row * map.width + column] - 1] ?? [];
  };

  const light = (may, over) => {
    if (!map) return;
    const image = figure.querySelector("img");
    if (!canvas.isConnected) {
      [canvas.width, canvas.height] = [map.width, map.height];
      figure.append(canvas);
    }
    canvas.style.width = `${image.clientWidth}px`;
    canvas.style.height = `${image.clientHeight}px`;
    const isOver = [false, ...sections.map(over)];
    const any = isOver.some(Boolean);
    const veils = [null, ...sections.map((own, place) => (!may(own) ? VEIL : any && !isOver[place + 1] ? THIN_VEIL : null))];
    const { numbers, width, height } = map;
    const pen = canvas.getContext("2d");
    const made = pen.createImageData(width, height);
    const isEdge = (place) =>
      isOver[numbers[place]] && [1, -1, width, -width, 2, -2, 2 * width, -2 * width].some((by) => !isOver[numbers[place + by] ?? 0]);
    for (let place = 0; place < numbers.length; place += 1) {
      const point = isEdge(place) ? LINE : veils[numbers[place]];
      if (point) made.data.set(point, 4 * place);
    }
    pen.putImageData(made, 0, 0);
  };

  return { figure, ready, at, light, clear: () => canvas.remove() };
};
