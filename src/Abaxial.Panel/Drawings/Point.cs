namespace Abaxial.Panel.Drawings;

/// <summary>A place in the box of a drawing: 64 wide, 64 high, downward.</summary>
internal readonly record struct Point(double X, double Y)
{
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    public static Point operator *(Point a, double by) => new(a.X * by, a.Y * by);

    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>The point at a distance in a direction; degrees, 0 to the right, 90 downward.</summary>
    public Point Toward(double degrees, double distance) =>
        new(X + (Math.Cos(degrees * Math.PI / 180) * distance), Y + (Math.Sin(degrees * Math.PI / 180) * distance));

    public Point TurnedAround(Point middle, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var from = this - middle;
        return new(middle.X + (from.X * cos) - (from.Y * sin), middle.Y + (from.X * sin) + (from.Y * cos));
    }

    public override string ToString() => $"{Ink.Number(X)} {Ink.Number(Y)}";
}
