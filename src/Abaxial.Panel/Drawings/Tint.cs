namespace Abaxial.Panel.Drawings;

/// <summary>
/// The colors of the drawings: custom properties, with the light theme's value for a drawing that stands alone. Both themes are in wwwroot/drawings.css.
/// Outlines take the color of the text; what lies inside an organ uses <see cref="Dark"/> and <see cref="White"/>, which stay dark and white in both themes.
/// </summary>
internal static class Tint
{
    public const string Ink = "currentColor";
    public const string Sheet = "var(--sheet,#fff)";
    public const string Dark = "var(--drawn-dark,#241a14)";
    public const string White = "var(--drawn-white,#fff)";
    public const string Leaf = "var(--drawn-leaf,#9db57c)";
    public const string Vein = "var(--drawn-vein,#6f8752)";
    public const string Under = "var(--drawn-under,#b9ca98)";
    public const string UnderVein = "var(--drawn-under-vein,#829765)";
    public const string Stem = "var(--drawn-stem,#b5c98d)";
    public const string Dead = "var(--drawn-dead,#94613d)";
    public const string Soaked = "var(--drawn-soaked,#5f7a60)";
    public const string Pale = "var(--drawn-pale,#dfe8bb)";
    public const string Yellow = "var(--drawn-yellow,#ecd469)";
    public const string Tan = "var(--drawn-tan,#dec59c)";
    public const string Bronze = "var(--drawn-bronze,#b0803a)";
    public const string Purple = "var(--drawn-purple,#7b4760)";
    public const string Gray = "var(--drawn-gray,#a79f95)";
    public const string Olive = "var(--drawn-olive,#6b6a2f)";
    public const string Pink = "var(--drawn-pink,#eb9fac)";
    public const string Orange = "var(--drawn-orange,#e5905a)";
    public const string Green = "var(--drawn-fruit-green,#c3d190)";
    public const string Ripe = "var(--drawn-fruit-ripe,#e58b70)";
    public const string Skin = "var(--drawn-skin,#dcb883)";
    public const string Flesh = "var(--drawn-flesh,#f6e9c2)";
    public const string Soil = "var(--drawn-soil,#b39a7d)";
    public const string Water = "var(--drawn-water,#d3e3ec)";
}
