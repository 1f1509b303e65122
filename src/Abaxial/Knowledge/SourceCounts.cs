namespace Abaxial.Knowledge;

/// <summary>How many rows rest on which kind of source.</summary>
public sealed record SourceCounts(int Publication, int CommonPractice, int Judgement)
{
    public int Rows => Publication + CommonPractice + Judgement;

    /// <summary>The share of rows that name a publication, 0 to 1; 0 where there are no rows.</summary>
    public double PublicationShare => Rows == 0 ? 0 : (double)Publication / Rows;

    /// <summary>Counts rows.</summary>
    public static SourceCounts Of(IEnumerable<Row> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var all = rows.ToList();
        return new SourceCounts(
            all.Count(row => row.SourceKind == SourceKind.Publication),
            all.Count(row => row.SourceKind == SourceKind.CommonPractice),
            all.Count(row => row.SourceKind == SourceKind.Judgement));
    }
}
