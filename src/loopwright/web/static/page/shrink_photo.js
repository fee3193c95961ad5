// A photo that is larger than it would be kept is made smaller here, so that it can be sent at all.
const LONGEST_SIDE = 1600;
const SMALL_ENOUGH_BYTES = 1_500_000;

const shrunk = async (file) => {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.9));
  return new File([blob], "photo.jpg", { type: "image/jpeg" });
};

for (const input of document.querySelectorAll("input[data-shrink]")) {
  input.addEventListener("change", async () => {
    const [file] = input.files;
    if (!file || file.size <= SMALL_ENOUGH_BYTES) return;
    try {
      const smaller = new DataTransfer();
      smaller.items.add(await shrunk(file));
      input.files = smaller.files;
    } catch {
      // The browser cannot read it; the server says what is wanted.
    }
  });
}
