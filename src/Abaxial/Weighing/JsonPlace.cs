namespace Abaxial.Weighing;

/// <summary>Where a reader of JSON stands: the names and indices that lead to the value that it reads next.</summary>
internal sealed class JsonPlace
{
    private readonly Stack<Level> levels = new();

    /// <summary>The next value opened an object or an array.</summary>
    public void Enter(bool isArray) => levels.Push(new Level(isArray));

    /// <summary>The innermost object or array closed.</summary>
    public void Leave()
    {
        levels.Pop();
        Pass();
    }

    /// <summary>A value is complete; what comes next stands after it.</summary>
    public void Pass()
    {
        if (!levels.TryPeek(out var level)) return;
        level.Index++;
        level.Name = null;
    }

    /// <summary>The next value is a member of this name.</summary>
    /// <returns>False where the object has a member of this name already.</returns>
    public bool Name(string name)
    {
        var level = levels.Peek();
        level.Name = name;
        return level.Names.Add(name);
    }

    /// <summary>The pointer of the next value; between the members of an object that of the object; of the nearest ancestor where it would be too long.</summary>
    public string ToPointer()
    {
        string at = "";
        foreach (var level in levels.Reverse())
        {
            if (level is { IsArray: false, Name: null }) break;
            string below = level.IsArray ? CaseProblems.Below(at, level.Index) : CaseProblems.Below(at, level.Name!);
            if (below.Length == at.Length) break;
            at = below;
        }

        return at;
    }

    private sealed class Level(bool isArray)
    {
        public bool IsArray => isArray;

        public int Index { get; set; }

        public string? Name { get; set; }

        // One set an object, not one cleared between them: clearing a set that a hostile object made large costs its size each time.
        public HashSet<string> Names => field ??= new HashSet<string>(StringComparer.Ordinal);
    }
}
