using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Abaxial.Data;

/// <summary>Marks tables that hold nothing of their own: they can be made anew from others, and a backup may leave them out.</summary>
public static class MadeAnew
{
    private const string Mark = "Abaxial:MadeAnew";

    /// <summary>Says of a table that it can be made anew from others. Whoever makes it does so where it finds it empty.</summary>
    public static EntityTypeBuilder<T> IsMadeAnew<T>(this EntityTypeBuilder<T> table)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(table);
        table.Metadata.SetAnnotation(Mark, true);
        return table;
    }

    internal static bool IsMadeAnew(this IReadOnlyEntityType table) => table.FindAnnotation(Mark) is not null;
}
