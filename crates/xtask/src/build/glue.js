const text = atob("{wasm}");
const packed = new Uint8Array(text.length);
for (let i = 0; i < text.length; i++) packed[i] = text.charCodeAt(i);
const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
const response = new Response(stream, { headers: { "content-type": "application/wasm" } });
const { instance, module } = await WebAssembly.instantiateStreaming(response, __wbg_get_imports());
__wbg_finalize_init(instance, module);
for (const form of globalThis.document?.querySelectorAll("form[data-saltwright]") ?? []) attach(form);
