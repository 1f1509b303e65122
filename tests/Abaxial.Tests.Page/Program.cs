using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

// No component is shown: the page only waits for JavaScript to call Bridge.
await WebAssemblyHostBuilder.CreateDefault(args).Build().RunAsync();
