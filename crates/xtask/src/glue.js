const packed = Uint8Array.from(atob("{wasm}"), (letter) => letter.charCodeAt(0));
const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
const response = new Response(stream, { headers: { "content-type": "application/wasm" } });
const { instance, module } = await WebAssembly.instantiateStreaming(response, __wbg_get_imports());
__wbg_finalize_init(instance, module);
for (const form of globalThis.document?.querySelectorAll("form[data-saltwright]") ?? []) attach(form);
