using Abaxial.Browser.Tests.Browsing;
using Abaxial.Panel.Drawings;

namespace Abaxial.Browser.Tests;

/// <summary>The drawings as pictures: none like another, none outside its box, all still different without color.</summary>
public sealed class Drawings_seen(DrawnPictures pictures) : IClassFixture<DrawnPictures>
{
    /// <summary>The least mean difference of two pictures at 40 px, of 255: about ten of the 1600 pixels turned from white to black.</summary>
    private const double LeastDifference = 1.5;

    /// <summary>Within a character, without color: the states that stand beside each other to be chosen from.</summary>
    private const double LeastGrayDifference = 2.5;

    [Fact]
    public void No_two_drawings_are_the_same_picture_at_40_pixels() =>
        Assert.Empty(Alike(LeastDifference, (a, b) => a.Elements != b.Elements, Difference)); // what is drawn by the same text is shared on purpose

    [Fact]
    public void States_of_a_character_differ_in_gray() =>
        Assert.Empty(Alike(LeastGrayDifference, (a, b) => a.CharacterId == b.CharacterId, GrayDifference));

    [Fact]
    public async Task No_drawing_leaves_its_box()
    {
        // Drawn into a box that is 8 units wider on every side, each of which is 1 pixel: the frame of 8 pixels stays empty.
        byte[][] pixels = await pictures.PixelsAsync(DrawnPictures.Drawings.Select(drawing => drawing.Svg.Replace("0 0 64 64", "-8 -8 80 80", StringComparison.Ordinal)), 80, null);
        var outside = DrawnPictures.Drawings.Where((_, drawing) => Enumerable.Range(0, 80 * 80).Any(pixel =>
            (pixel % 80 is < 8 or >= 72 || pixel / 80 is < 8 or >= 72) && pixels[drawing][(pixel * 4) + 3] > 8));
        Assert.Empty(outside.Select(Name));
    }

    [Fact]
    public void Every_drawing_has_dark_places_without_color()
    {
        var pale = DrawnPictures.Drawings.Where((_, drawing) => Enumerable.Range(0, 1600).Count(pixel => Gray(pictures.Small[drawing], pixel) < 110) < 8);
        Assert.Empty(pale.Select(Name));
    }

    private IEnumerable<string> Alike(double least, Func<StateDrawing, StateDrawing, bool> compared, Func<byte[], byte[], double> difference)
    {
        var drawings = DrawnPictures.Drawings;
        return from a in Enumerable.Range(0, drawings.Length)
               from b in Enumerable.Range(a + 1, drawings.Length - a - 1)
               where compared(drawings[a], drawings[b])
               let found = difference(pictures.Small[a], pictures.Small[b])
               where found < least
               select $"{Name(drawings[a])} and {Name(drawings[b])}: {found:0.00}";
    }

    private static double Difference(byte[] a, byte[] b)
    {
        long sum = 0;
        for (int i = 0; i < a.Length; i++) sum += Math.Abs(a[i] - b[i]);
        return sum / (a.Length * 0.75); // the fourth byte, cover, is everywhere full
    }

    private static double GrayDifference(byte[] a, byte[] b) => Enumerable.Range(0, a.Length / 4).Average(pixel => Math.Abs(Gray(a, pixel) - Gray(b, pixel)));

    /// <summary>Luma of ITU-R BT.601.</summary>
    private static double Gray(byte[] pixels, int pixel) => (0.299 * pixels[pixel * 4]) + (0.587 * pixels[(pixel * 4) + 1]) + (0.114 * pixels[(pixel * 4) + 2]);

    private static string Name(StateDrawing drawing) => $"{drawing.CharacterId}/{drawing.StateId}";
}
