using Abaxial.Panel.Drawings;
using Microsoft.Playwright;

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>The drawings, rasterized by Chromium.</summary>
public sealed class DrawnPictures : IAsyncLifetime
{
    /// <summary>Draws every text into a square of pixels and gives red, green and blue over a background, or how much of each pixel is covered.</summary>
    private const string Rasterize = """
        async ([texts, size, background]) => {
          const canvas = document.createElement('canvas');
          canvas.width = canvas.height = size;
          const pen = canvas.getContext('2d', { willReadFrequently: true });
          const all = [];
          for (const text of texts) {
            const picture = new Image();
            await new Promise((done, failed) => { picture.onload = done; picture.onerror = () => failed(new Error('not a picture: ' + text)); picture.src = 'data:image/svg+xml,' + encodeURIComponent(text); });
            pen.clearRect(0, 0, size, size);
            if (background) { pen.fillStyle = background; pen.fillRect(0, 0, size, size); }
            pen.drawImage(picture, 0, 0, size, size);
            const data = pen.getImageData(0, 0, size, size).data;
            all.push(data.toBase64 ? data.toBase64() : btoa(Array.from(data, byte => String.fromCharCode(byte)).join('')));
          }
          return all;
        }
        """;

    /// <summary>Every drawing at 40 px on white, in the order of <see cref="Drawings"/>.</summary>
    public IReadOnlyList<byte[]> Small { get; private set; } = [];

    private IPlaywright? playwright;
    private IBrowser? browser;
    private IPage? page;

    public static StateDrawing[] Drawings { get; } = [.. StateDrawings.All];

    public async ValueTask InitializeAsync()
    {
        (playwright, browser) = await Chromium.LaunchAsync();
        page = await browser.NewPageAsync();
        Small = await PixelsAsync(Drawings.Select(drawing => drawing.Svg), 40, "#fff");
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>Four bytes a pixel: red, green, blue, cover; row by row from the top.</summary>
    /// <param name="svgs">The documents to draw.</param>
    /// <param name="size">Pixels of a side.</param>
    /// <param name="background">A CSS color behind the picture; null for none.</param>
    public async Task<byte[][]> PixelsAsync(IEnumerable<string> svgs, int size, string? background)
    {
        string[] texts = await page!.EvaluateAsync<string[]>(Rasterize, new object?[] { svgs.Select(svg => svg.Replace("<svg ", $"<svg width=\"{size}\" height=\"{size}\" ", StringComparison.Ordinal)).ToArray(), size, background });
        return [.. texts.Select(Convert.FromBase64String)];
    }
}
