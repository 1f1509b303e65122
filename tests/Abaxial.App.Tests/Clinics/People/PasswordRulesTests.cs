using Abaxial.Web.People;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class PasswordRulesTests
{
    [Theory]
    [InlineData("elevenchars")]
    [InlineData("password1234")]
    [InlineData("P@ssw0rd2026!")]
    [InlineData("123456789012")]
    [InlineData("qwertyuiopas")]
    [InlineData("abababababab")]
    [InlineData("aaaaaaaaaaaaaaaa")]
    [InlineData("letmein letmein letmein")]
    [InlineData("hesperdunnick26")]
    public void What_is_tried_first_is_refused(string password) => Assert.NotNull(PasswordRules.FaultOf(password, "d-01", "Hesper Dunnick"));

    [Theory]
    [InlineData("seven wet leaves in a tray")]
    [InlineData("correct kettle batch")]
    [InlineData("пятнадцать листьев")]
    [InlineData("🍅🥔🍅🌱🥀🍅🥔🌾🌧🍂🍃🌿")]
    public void Any_letters_do(string password) => Assert.Null(PasswordRules.FaultOf(password, "d-01", "Hesper Dunnick"));

    [Fact]
    public void A_hash_fits_its_password_and_no_hash_fits_none()
    {
        var work = new PasswordWork();
        string hash = work.HashOf("caf\u00E9 au lait du matin");
        Assert.True(work.Fits(hash, "caf\u00E9 au lait du matin"));
        Assert.False(work.Fits(hash, "cafe au lait du matin"));
        Assert.False(work.Fits(null, ""));
    }
}
